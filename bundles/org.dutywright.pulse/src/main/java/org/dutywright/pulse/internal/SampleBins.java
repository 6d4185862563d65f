// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * The samples of one state outside transitions and their aberrations, counted by level, as far as they lie within an eighth
 * of the swing of it. Of a long stretch every fourth is looked at and counts for four. Constant memory.
 */
final class SampleBins {
    private static final int BINS = 4096;
    private static final double REACH = 0.125;
    private static final int LONG = 256;
    private static final int STRIDE = 4;

    private final double start;
    private final double width;
    private final double scale;
    private final double centre;
    private final long[] counts = new long[BINS];
    private final double[] sums = new double[BINS];
    private long total;
    private long looked;

    /**
     * Nothing yet.
     *
     * @param centre a level near the state
     * @param swing distance of the two states, about
     */
    SampleBins(double centre, double swing) {
        this.centre = centre;
        start = centre - REACH * swing;
        width = 2 * REACH * swing / BINS;
        scale = 1 / width;
    }

    void add(double[] values, int from, int to) {
        int stride = to - from < LONG ? 1 : STRIDE;
        for (int i = from; i < to; i += stride) {
            double place = (values[i] - start) * scale;
            if (place >= 0 && place < BINS) {
                int bin = (int) place;
                counts[bin] += stride;
                sums[bin] += stride * (values[i] - centre);
                looked++;
                total += stride;
            }
        }
    }

    /** Number of samples looked at. */
    long looked() {
        return looked;
    }

    /** What the bins resolve. */
    double width() {
        return width;
    }

    /** Median of the samples, to the width of a bin. */
    double median() {
        long passed = 0;
        for (int bin = 0; bin < BINS; bin++) {
            passed += counts[bin];
            if (2 * passed >= total) {
                return start + (bin + 0.5) * width;
            }
        }
        return centre;
    }

    /**
     * The shorth: mean of the samples in the shortest interval that holds half of them (NIST TN 2036, DOI
     * 10.6028/NIST.TN.2036).
     */
    double shorth() {
        long inside = 0;
        double sum = 0;
        int from = 0;
        int shortest = Integer.MAX_VALUE;
        double mean = 0;
        for (int to = 0; to < BINS; to++) {
            inside += counts[to];
            sum += sums[to];
            while (2 * (inside - counts[from]) >= total && from < to) {
                inside -= counts[from];
                sum -= sums[from];
                from++;
            }
            if (2 * inside >= total && to - from < shortest) {
                shortest = to - from;
                mean = sum / inside;
            }
        }
        return centre + mean;
    }
}
