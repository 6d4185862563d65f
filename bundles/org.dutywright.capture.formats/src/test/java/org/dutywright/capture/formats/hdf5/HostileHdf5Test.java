// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.jhdf.HdfFile;
import io.jhdf.WritableHdfFile;
import io.jhdf.api.DatasetCreationOptions;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.assertj.core.api.AbstractThrowableAssert;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that declare what they do not have, or far more than anybody wants. */
class HostileHdf5Test {
    @TempDir
    Path folder;

    private static byte[] bytes(String name) throws IOException {
        try (InputStream stream = HostileHdf5Test.class.getResourceAsStream(name)) {
            return stream.readAllBytes();
        }
    }

    private static ByteBuffer view(byte[] bytes) {
        return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static int tree(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1).indexOf("TREE\u0001\u0000");
    }

    private AbstractThrowableAssert<?, ?> refused(byte[] bytes) throws IOException {
        return refused(Files.write(folder.resolve("hostile.h5"), bytes));
    }

    private static AbstractThrowableAssert<?, ?> refused(Path file) {
        return assertThatThrownBy(() -> new Hdf5CaptureReader().read(file, CaptureValues.at(1000), Progress.NONE))
                .isInstanceOf(UnreadableException.class)
                .hasMessageStartingWith(file + "")
                .hasMessageNotContaining("\n");
    }

    private Path zeros(int count, int chunk) {
        Path file = folder.resolve("zeros.h5");
        try (WritableHdfFile hdf = HdfFile.write(file)) {
            hdf.putDataset(
                    "signal1",
                    new double[count],
                    DatasetCreationOptions.builder()
                            .chunkDimensions(chunk)
                            .deflate(9)
                            .build());
        }
        return file;
    }

    @Test
    void aFileThatUnpacksToFarMoreThanItTakesIsRefused() {
        refused(zeros(9 << 20, 1 << 19)).hasMessageContaining("the file unpacks to more than 67108864 bytes");
    }

    @Test
    void aChunkTooLargeToUnpackIsRefused() {
        refused(zeros(5 << 20, 5 << 20))
                .hasMessageContaining("its chunks take 41943040 bytes or more")
                .hasMessageEndingWith("write the file with chunks of at most 1 MiB");
    }

    @Test
    void moreRowsThanAFileHasRoomForAreRefused() throws IOException {
        byte[] bytes = bytes("unfinished.h5");
        for (int at = 0; at + Long.BYTES <= bytes.length; at++) {
            if (view(bytes).getLong(at) == 2400) {
                view(bytes).putLong(at, 1L << 40);
            }
        }
        refused(bytes).hasMessageContaining("dataset signal1: it declares 1099511627776 rows");
    }

    @Test
    void anIndexThatLeadsToItselfIsRefused() throws IOException {
        byte[] bytes = bytes("channels.h5");
        int tree = tree(bytes);
        // level 1: its entries are nodes; the first key of 8 bytes and two offsets stands before the first of them
        bytes[tree + 5] = 1;
        view(bytes).putLong(tree + 24 + 24, tree);
        refused(bytes).hasMessageContaining("the HDF5 structure leads in circles");
    }

    @Test
    void aChunkThatIsNoDeflatedBytesIsRefusedWithItsPlace() throws IOException {
        byte[] bytes = bytes("channels.h5");
        int tree = tree(bytes);
        long chunk = view(bytes).getLong(tree + 24 + 24);
        view(bytes).putLong((int) chunk, -1);
        refused(bytes)
                .hasMessageContaining(", byte " + chunk + ": dataset Waveforms/signal1: a chunk cannot be unpacked");
    }
}
