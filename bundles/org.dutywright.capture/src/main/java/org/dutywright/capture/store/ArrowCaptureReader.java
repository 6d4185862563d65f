// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;

/**
 * Reads Arrow IPC files: stores written by {@link CaptureStore}, whose samples stay where they lie, and any other
 * table of numbers, whose rows are copied as those of other formats are.
 *
 * <p>Of another table, the column of time is the first whose name, unit or type says so; whole and floating numbers
 * become channels, columns of other types are left out and said to be. Rows in which a number is missing are left out
 * and appear as gaps. Compressed batches, nested columns and big-endian numbers are refused, and so is the stream
 * form of the format, which has no footer.
 */
@ServiceProvider(CaptureReader.class)
public final class ArrowCaptureReader implements CaptureReader {
    private static final int CERTAIN = 100;

    private final long heapValues;

    /** Makes the reader. */
    public ArrowCaptureReader() {
        this(CaptureBuilder.HEAP_VALUES);
    }

    ArrowCaptureReader(long heapValues) {
        this.heapValues = heapValues;
    }

    @Override
    public String id() {
        return "arrow";
    }

    @Override
    public String title() {
        return "Arrow IPC file";
    }

    @Override
    public int likelihood(byte[] head) {
        int length = ArrowFileWriter.MAGIC.length;
        boolean magic = head.length >= length && Arrays.equals(head, 0, length, ArrowFileWriter.MAGIC, 0, length);
        return magic ? CERTAIN : 0;
    }

    @Override
    public Capture read(Path path, ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        ArrowFile file = ArrowFile.open(path, progress);
        boolean kept = false;
        try {
            progress.begin("reading " + path.getFileName(), file.size());
            if (file.metadata().containsKey(StoreMetadata.STORE)) {
                Capture capture = StoredCapture.read(file, settings, progress);
                kept = true;
                return capture;
            }
            return PlainTable.read(file, settings, heapValues, progress);
        } finally {
            if (!kept) {
                file.close();
            }
        }
    }
}
