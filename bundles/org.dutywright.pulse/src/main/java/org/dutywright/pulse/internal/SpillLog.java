// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

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

    /**
     * The value that a record stands for, in the place of one that is needed no more; a subclass may make a new one.
     *
     * @param spare null where there is none yet
     */
    T of(double[] record, T spare) {
        return of(record);
    }

    /** Starts reading at the first value. */
    final Reader<T> reader() {
        return new Reader<>(this, 0);
    }

    /**
     * The same for long walks: a value holds until so many more have been read, then its object may be used again.
     *
     * @param kept 1 or more
     */
    final Reader<T> reader(int kept) {
        return new Reader<>(this, kept);
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
        private final int kept;
        private final List<T> used = new ArrayList<>();
        private int oldest;
        private long next;

        private Reader(SpillLog<T> log, int kept) {
            this.log = log;
            this.kept = kept;
            cursor = log.spill.cursor();
            record = new double[log.width];
        }

        /** The next value, or null after the last one. */
        T next() throws IOException {
            if (atEnd()) {
                return null;
            }
            cursor.read(next++, record);
            return kept == 0 ? log.of(record) : reused();
        }

        private T reused() {
            if (used.size() < kept) {
                used.add(log.of(record, null));
                return used.getLast();
            }
            T value = log.of(record, used.get(oldest));
            used.set(oldest, value);
            oldest = oldest + 1 == kept ? 0 : oldest + 1;
            return value;
        }

        /** Whether the value read last is the last one. */
        boolean atEnd() {
            return next == log.size();
        }
    }
}
