// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.mat;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.DeflaterOutputStream;
import org.assertj.core.api.AbstractThrowableAssert;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files built by hand that declare what they do not have, or far more than anybody wants. */
class HostileMatTest {
    private static final int INT8 = 1;
    private static final int INT32 = 5;
    private static final int UINT32 = 6;
    private static final int DOUBLE = 9;
    private static final int MATRIX = 14;
    private static final int COMPRESSED = 15;

    @TempDir
    Path folder;

    private static byte[] join(byte[]... parts) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            all.writeBytes(part);
        }
        return all.toByteArray();
    }

    private static byte[] ints(int... values) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int value : values) {
            bytes.putInt(value);
        }
        return bytes.array();
    }

    private static byte[] element(int type, byte[] content) {
        byte[] padded = type == COMPRESSED ? content : Arrays.copyOf(content, (content.length + 7) / 8 * 8);
        return join(ints(type, content.length), padded);
    }

    private static byte[] array(int ofClass, String name, int[] lengths, byte[]... content) {
        return element(
                MATRIX,
                join(
                        element(UINT32, ints(ofClass, 0)),
                        element(INT32, ints(lengths)),
                        element(INT8, name.getBytes(StandardCharsets.US_ASCII)),
                        join(content)));
    }

    private static byte[] deflated(byte[] content) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DeflaterOutputStream packer = new DeflaterOutputStream(bytes)) {
            packer.write(content);
        }
        return element(COMPRESSED, bytes.toByteArray());
    }

    private AbstractThrowableAssert<?, ?> refused(byte[]... variables) throws IOException {
        byte[] head = Arrays.copyOf("MATLAB 5.0 MAT-file, by hand".getBytes(StandardCharsets.US_ASCII), 128);
        head[125] = 1;
        head[126] = 'I';
        head[127] = 'M';
        Path file = Files.write(folder.resolve("hostile.mat"), join(head, join(variables)));
        return assertThatThrownBy(() -> new MatCaptureReader().read(file, CaptureValues.at(1000), Progress.NONE))
                .isInstanceOf(UnreadableException.class)
                .hasMessageStartingWith(file.toString())
                .hasMessageNotContaining("\n");
    }

    @Test
    void aVariableThatUnpacksToFarMoreThanItTakesIsRefused() throws IOException {
        int bytes = 80 << 20;
        refused(deflated(array(6, "signal1", new int[] {bytes / 8, 1}, element(DOUBLE, new byte[bytes]))))
                .hasMessageContaining("the file unpacks to far more than it takes packed");
    }

    @Test
    void structsNestedWithoutEndAreRefused() throws IOException {
        byte[] inner = array(6, "", new int[] {1, 1}, element(DOUBLE, new byte[8]));
        for (int i = 0; i < 200; i++) {
            inner = array(
                    2,
                    "",
                    new int[] {1, 1},
                    element(INT32, ints(8)),
                    element(INT8, new byte[] {'a', 0, 0, 0, 0, 0, 0, 0}),
                    inner);
        }
        byte[] last = inner;
        refused(array(
                        2,
                        "s",
                        new int[] {1, 1},
                        element(INT32, ints(8)),
                        element(INT8, new byte[] {'a', 0, 0, 0, 0, 0, 0, 0}),
                        last))
                .hasMessageContaining("variables are nested too deep");
    }

    @Test
    void countsThatAreOnlyDeclaredMakeNoRoom() throws IOException {
        byte[] cell = array(
                1, "", new int[] {Integer.MAX_VALUE, 1}, array(6, "", new int[] {0, 0}, element(DOUBLE, new byte[0])));
        refused(array(
                2,
                "s",
                new int[] {1, 1},
                element(INT32, ints(8)),
                element(INT8, new byte[] {'a', 0, 0, 0, 0, 0, 0, 0}),
                cell));
        refused(array(2, "s", new int[] {1 << 30, 1}, element(INT32, ints(8)), element(INT8, new byte[] {
                    'a', 0, 0, 0, 0, 0, 0, 0
                })))
                .hasMessageContaining("an array of 1073741824 structs of 1 fields");
        refused(array(4, "text", new int[] {1, Integer.MAX_VALUE}, element(INT8, new byte[0])));
        refused(array(6, "signal1", new int[] {1 << 16, 1 << 16}, element(DOUBLE, new byte[0])));
    }

    @Test
    void aNameLongerThanAnyIsRefused() throws IOException {
        refused(array(6, "n".repeat(2 << 20), new int[] {1, 1}, element(DOUBLE, new byte[8])))
                .hasMessageContaining("names and dimensions take 2097152 bytes");
    }

    @Test
    void packedBytesWithinPackedBytesAreRefused() throws IOException {
        refused(deflated(deflated(new byte[100])));
    }
}
