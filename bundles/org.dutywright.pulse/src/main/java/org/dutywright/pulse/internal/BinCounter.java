// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.util.Arrays;

/**
 * Counts samples by bins of equal width; what lies outside counts for the first or the last bin. Neighbours are often in the
 * same bin, and an addition there must wait for the one before: two counts side by side halve that.
 */
final class BinCounter {
    private static final int PIECE = 1 << 10;

    /** Samples after which the counts go to their target, far below what an int holds. */
    private static final int MOST = 1 << 30;

    private final double start;
    private final double scale;
    private final int[] even;
    private final int[] odd;
    private final int[] places = new int[PIECE];
    private final long[][] targets;
    private int target;
    private int counted;

    /**
     * Nothing counted.
     *
     * @param start lower end of the first bin
     * @param scale bins a unit
     * @param targets rows of bins that get the counts
     */
    BinCounter(double start, double scale, long[][] targets) {
        this.start = start;
        this.scale = scale;
        this.targets = targets;
        even = new int[targets[0].length];
        odd = new int[targets[0].length];
    }

    /** Adds the samples from {@code from} to before {@code to} to a row, by {@link #finish} at the latest. */
    void count(int row, double[] values, int from, int to) {
        if (row != target || counted > MOST) {
            finish();
            target = row;
        }
        for (int i = from; i < to; i += PIECE) {
            int number = Math.min(PIECE, to - i);
            place(values, i, number);
            add(number);
        }
        counted += to - from;
    }

    // a cast holds at the ends of int, as the clamp does then at those of the bins
    private void place(double[] values, int from, int number) {
        int last = even.length - 1;
        for (int i = 0; i < number; i++) {
            places[i] = Math.max(0, Math.min((int) ((values[from + i] - start) * scale), last));
        }
    }

    private void add(int number) {
        int i = 0;
        for (; i + 1 < number; i += 2) {
            even[places[i]]++;
            odd[places[i + 1]]++;
        }
        if (i < number) {
            even[places[i]]++;
        }
    }

    /** Brings what was counted to its row. */
    void finish() {
        long[] bins = targets[target];
        for (int i = 0; i < bins.length; i++) {
            bins[i] += (long) even[i] + odd[i];
        }
        Arrays.fill(even, 0);
        Arrays.fill(odd, 0);
        counted = 0;
    }
}
