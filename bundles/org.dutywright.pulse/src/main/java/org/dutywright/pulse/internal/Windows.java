// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.util.Arrays;
import org.dutywright.pulse.internal.fitness.SampleWindows;

/**
 * Keeps some hundred short windows spread over a recording, at most about 64 Ki samples of it. Each window lies at the
 * start of a block or of an even share of the recording, so the choice depends on nothing but the samples.
 */
final class Windows {
    private static final int WINDOW = 256;
    private static final int WINDOWS = 256;
    /** A median of absolute differences times this is a standard deviation of normal noise: 1 / (0.67449 sqrt(2)). */
    private static final double SD_OF_MEDIAN_DIFFERENCE = 1 / (0.674489750196082 * Math.sqrt(2));

    private final double[] values = new double[WINDOW * WINDOWS];
    private final double[] differences = new double[WINDOW * WINDOWS];
    /** Index of the first value of each stretch of neighbouring samples. */
    private int[] starts = new int[WINDOWS];

    private final long spacing;
    private long seen;
    private int count;
    private int differenceCount;
    private int startCount;
    private double last;

    Windows(long sampleCount) {
        spacing = Math.max(1, sampleCount / WINDOWS);
    }

    /** Takes the samples of a block that lie in a window. */
    void take(double[] block, int blockCount, boolean segmentStart) {
        int i = 0;
        while (i < blockCount && count < values.length) {
            long phase = (seen + i) % spacing;
            if (phase < WINDOW) {
                int to = (int) Math.min(blockCount, i + Math.min(WINDOW, spacing) - phase);
                keep(block, i, to, (phase == 0 && spacing > WINDOW) || (i == 0 && segmentStart));
                i = to;
            } else {
                i = (int) Math.min(blockCount, i + spacing - phase);
            }
        }
        seen += blockCount;
    }

    private void keep(double[] block, int from, int to, boolean fresh) {
        boolean first = fresh || count == 0;
        if (first) {
            start();
        }
        for (int i = from; i < to && count < values.length; i++) {
            if (!first) {
                differences[differenceCount++] = Math.abs(block[i] - last);
            }
            first = false;
            last = block[i];
            values[count++] = last;
        }
    }

    private void start() {
        if (startCount == starts.length) {
            starts = Arrays.copyOf(starts, 2 * startCount);
        }
        starts[startCount++] = count;
    }

    /** The kept samples, with the borders of the stretches. */
    SampleWindows stretches() {
        return SampleWindows.of(values(), Arrays.copyOf(starts, startCount));
    }

    /** The kept samples. */
    double[] values() {
        return Arrays.copyOf(values, count);
    }

    /**
     * Standard deviation of noise that is independent from sample to sample. Edges are rare among the differences, so
     * they do not move the median; coarse codes may make it 0, which {@link CodeStep} covers.
     */
    double noise() {
        if (differenceCount == 0) {
            return 0;
        }
        double[] sorted = Arrays.copyOf(differences, differenceCount);
        Arrays.sort(sorted);
        return sorted[sorted.length / 2] * SD_OF_MEDIAN_DIFFERENCE;
    }
}
