// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/** Places in time, in the order in which they start; as many as there are, in constant memory. */
final class MarkLog implements AutoCloseable {
    /**
     * One place.
     *
     * @param startSeconds where it starts, from the capture's first sample
     * @param endSeconds where it ends
     * @param value what was seen: the peak of a runt, the number of further transitions of a bounce
     * @param high whether the state concerned is the high one
     */
    record Mark(double startSeconds, double endSeconds, double value, boolean high) {}

    private final RecordSpill spill = new RecordSpill(4);

    void add(double startSeconds, double endSeconds, double value, boolean high) throws IOException {
        spill.add(startSeconds, endSeconds, value, high ? 1 : 0);
    }

    Reader reader() {
        return new Reader();
    }

    @Override
    public void close() throws IOException {
        spill.close();
    }

    /** Reads the marks in order. */
    final class Reader {
        private final RecordSpill.Cursor cursor = spill.cursor();
        private final double[] record = new double[4];
        private long next;

        /** The next mark, or null after the last one. */
        Mark next() throws IOException {
            if (next == spill.size()) {
                return null;
            }
            cursor.read(next++, record);
            return new Mark(record[0], record[1], record[2], record[3] != 0);
        }
    }
}
