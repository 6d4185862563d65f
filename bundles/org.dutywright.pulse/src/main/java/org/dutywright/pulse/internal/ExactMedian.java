// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/**
 * The exact median of any number of values of 0 or more in constant memory: the values are gone through again and
 * again, each time telling 16 more bits of the one looked for. Bit patterns of such doubles sort as the doubles do.
 */
final class ExactMedian {
    private static final int BITS = 16;

    private ExactMedian() {}

    /** Goes through all values, the same ones on each call. */
    interface Values {
        void forEach(Sink sink) throws IOException;
    }

    /** Takes a value. */
    interface Sink {
        void take(double value);
    }

    /** The middle value, or the mean of the two middle ones; NaN without any. */
    static double of(Values values) throws IOException {
        long[] count = new long[1];
        values.forEach(value -> count[0]++);
        if (count[0] == 0) {
            return Double.NaN;
        }
        double lower = select(values, (count[0] - 1) / 2);
        return count[0] % 2 == 1 ? lower : (lower + following(values, lower, count[0] / 2)) / 2;
    }

    /** The value of a rank, if the value of the rank before is {@code lower}. */
    private static double following(Values values, double lower, long rank) throws IOException {
        long[] upTo = new long[1];
        double[] next = {Double.POSITIVE_INFINITY};
        values.forEach(value -> {
            if (value <= lower) {
                upTo[0]++;
            } else {
                next[0] = Math.min(next[0], value);
            }
        });
        return upTo[0] > rank ? lower : next[0];
    }

    private static double select(Values values, long rank) throws IOException {
        long prefix = 0;
        long rest = rank;
        for (int shift = Long.SIZE - BITS; shift >= 0; shift -= BITS) {
            long[] counts = new long[1 << BITS];
            long known = prefix;
            int low = shift;
            values.forEach(value -> {
                // adding 0 turns -0 into 0
                long bits = Double.doubleToRawLongBits(value + 0.0);
                if (low == Long.SIZE - BITS || bits >>> (low + BITS) == known) {
                    counts[(int) (bits >>> low) & 0xFFFF]++;
                }
            });
            int bin = 0;
            while (rest >= counts[bin]) {
                rest -= counts[bin++];
            }
            prefix = prefix << BITS | bin;
        }
        return Double.longBitsToDouble(prefix);
    }
}
