// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.Arrays;

/**
 * The median of a stream of values above 0 in bounded memory: exact for up to 65,536 values, for more to 1 in 10,000
 * (values are then counted in 8,192 bins an octave, and the mean of the values in the middle bin is taken).
 */
public final class MedianSketch {
    private static final int EXACT = 1 << 16;
    private static final int BIN_BITS = 13;
    private static final int BINS = 1 << BIN_BITS;
    private static final int MANTISSA_BITS = 52;
    private static final int EXPONENTS = 1 << 11;

    private double[] exact = new double[16];
    private int exactCount;
    private long[][] counts;
    private double[][] sums;
    private long count;

    /** An empty one. */
    public MedianSketch() {}

    /** Takes a value above 0. */
    public void add(double value) {
        count++;
        if (counts == null && exactCount < EXACT) {
            if (exactCount == exact.length) {
                exact = Arrays.copyOf(exact, 2 * exactCount);
            }
            exact[exactCount++] = value;
            return;
        }
        if (counts == null) {
            counts = new long[EXPONENTS][];
            sums = new double[EXPONENTS][];
            for (double kept : exact) {
                bin(kept);
            }
            exact = new double[0];
        }
        bin(value);
    }

    private void bin(double value) {
        long bits = Double.doubleToRawLongBits(value);
        int exponent = (int) (bits >>> MANTISSA_BITS) & (EXPONENTS - 1);
        int index = (int) (bits >>> (MANTISSA_BITS - BIN_BITS)) & (BINS - 1);
        if (counts[exponent] == null) {
            counts[exponent] = new long[BINS];
            sums[exponent] = new double[BINS];
        }
        counts[exponent][index]++;
        sums[exponent][index] += value;
    }

    /** Number of values taken. */
    public long count() {
        return count;
    }

    /** The median, NaN without a value. */
    public double median() {
        if (count == 0) {
            return Double.NaN;
        }
        if (counts != null) {
            return binned();
        }
        double[] sorted = Arrays.copyOf(exact, exactCount);
        Arrays.sort(sorted);
        return (sorted[(exactCount - 1) / 2] + sorted[exactCount / 2]) / 2;
    }

    private double binned() {
        long passed = 0;
        for (int exponent = 0; exponent < EXPONENTS; exponent++) {
            for (int index = 0; counts[exponent] != null && index < BINS; index++) {
                passed += counts[exponent][index];
                if (2 * passed >= count) {
                    return sums[exponent][index] / counts[exponent][index];
                }
            }
        }
        throw new IllegalStateException("bins hold fewer values than were taken");
    }
}
