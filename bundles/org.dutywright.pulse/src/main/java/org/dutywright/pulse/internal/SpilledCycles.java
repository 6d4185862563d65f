// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.OptionalLong;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;

/** The cycles of a channel, on the heap while they are few and in a temporary file when they are many. */
final class SpilledCycles implements CycleTable {
    private static final int WIDTH = 5;

    private final double originSeconds;
    private final RecordSpill spill = new RecordSpill(WIDTH);
    private final RecordSpill.Cursor single = spill.cursor();

    /**
     * An empty table.
     *
     * @param originSeconds instant of the capture's first sample
     */
    SpilledCycles(double originSeconds) {
        this.originSeconds = originSeconds;
    }

    /** Adds a cycle. */
    void add(RawCycle cycle) throws IOException {
        spill.add(
                cycle.startSeconds,
                cycle.periodSeconds(),
                cycle.switchSeconds - cycle.startSeconds,
                cycle.area / cycle.periodSeconds(),
                cycle.disturbed ? 1 : 0);
    }

    @Override
    public long size() {
        return spill.size();
    }

    @Override
    public synchronized Cycle get(long index) throws IOException {
        double[] record = new double[WIDTH];
        single.read(index, record);
        return cycle(index, record);
    }

    private Cycle cycle(long index, double[] record) {
        return new Cycle(index, originSeconds + record[0], record[1], record[2], record[3], record[4] != 0);
    }

    /** Index of the first cycle that ends after an instant, {@link #size} if there is none. */
    long firstEndingAfter(double seconds) throws IOException {
        long from = 0;
        long to = size();
        while (from < to) {
            long middle = (from + to) >>> 1;
            if (get(middle).endSeconds() > seconds) {
                to = middle;
            } else {
                from = middle + 1;
            }
        }
        return from;
    }

    /** Index of the cycle that an instant falls into. */
    OptionalLong at(double seconds) throws IOException {
        long index = firstEndingAfter(seconds);
        boolean inside = index < size() && get(index).startSeconds() <= seconds;
        return inside ? OptionalLong.of(index) : OptionalLong.empty();
    }

    @Override
    public Cursor cursor() {
        RecordSpill.Cursor reader = spill.cursor();
        double[] record = new double[WIDTH];
        long[] next = {0};
        return () -> {
            if (next[0] == spill.size()) {
                return null;
            }
            reader.read(next[0], record);
            return cycle(next[0]++, record);
        };
    }

    @Override
    public void close() throws IOException {
        spill.close();
    }
}
