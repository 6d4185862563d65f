// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/**
 * Values in the order in which they came, as many as there are, in constant memory.
 *
 * @param <T> what is kept; a subclass writes it as a record of numbers and makes it from one
 */
abstract class SpillLog<T> implements AutoCloseable {
    private final RecordSpill spill;
    private final int width;

    /** An empty log of records of so many numbers. */
    SpillLog(int width) {
        this.width = width;
        spill = new RecordSpill(width);
    }

    /** Adds a record. */
    final void put(double... record) throws IOException {
        spill.add(record);
    }

    /** The value that a record stands for. */
    abstract T of(double[] record);

    /** Number of values. */
    final long size() {
        return spill.size();
    }

    /** Starts reading at the first value. */
    final Reader<T> reader() {
        return new Reader<>(this);
    }

    @Override
    public final void close() throws IOException {
        spill.close();
    }

    /** Reads the values in order. */
    static final class Reader<T> {
        private final SpillLog<T> log;
        private final RecordSpill.Cursor cursor;
        private final double[] record;
        private long next;

        private Reader(SpillLog<T> log) {
            this.log = log;
            cursor = log.spill.cursor();
            record = new double[log.width];
        }

        /** The next value, or null after the last one. */
        T next() throws IOException {
            if (atEnd()) {
                return null;
            }
            cursor.read(next++, record);
            return log.of(record);
        }

        /** Whether the value read last is the last one. */
        boolean atEnd() {
            return next == log.size();
        }
    }
}
