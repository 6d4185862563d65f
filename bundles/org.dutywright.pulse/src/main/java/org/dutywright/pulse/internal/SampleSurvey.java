// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/**
 * First pass over a channel: range, mean and scatter of all samples, and what a few hundred spread windows tell of the
 * code step and the noise. Mean and squares are combined block by block (Chan, Golub, LeVeque 1979), so that an offset
 * costs no digits.
 *
 * @param count number of samples
 * @param min smallest sample
 * @param max largest sample
 * @param mean average of the samples
 * @param squares sum of the squared deviations from the mean
 * @param noise standard deviation of the noise between neighbouring samples, from the median of their differences
 * @param codes what the values tell of the code step
 */
record SampleSurvey(long count, double min, double max, double mean, double squares, double noise, CodeStep codes) {

    /**
     * Reads a channel.
     *
     * @param windows receives some of the samples, for whoever needs to look at neighbours
     */
    static SampleSurvey of(ChannelBlocks blocks, Windows windows) throws IOException {
        long count = 0;
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        double mean = 0;
        double squares = 0;
        while (blocks.next()) {
            double[] values = blocks.values();
            int here = blocks.count();
            for (int i = 0; i < here; i++) {
                double value = values[i];
                min = value < min ? value : min;
                max = value > max ? value : max;
            }
            double blockMean = Sums.of(values, 0, here) / here;
            double delta = blockMean - mean;
            squares += Sums.ofSquares(values, 0, here, blockMean) + delta * delta * count * here / (count + here);
            mean += delta * here / (count + here);
            count += here;
            windows.take(values, here, blocks.segmentStart());
        }
        return new SampleSurvey(count, min, max, mean, squares, windows.noise(), CodeStep.among(windows.values()));
    }

    /** Standard deviation of all samples, 0 for fewer than two. */
    double sd() {
        return count < 2 ? 0 : Math.sqrt(squares / (count - 1));
    }

    /** Root of the mean square, taken from mean and scatter. */
    double rms() {
        return Math.sqrt(mean * mean + squares / count);
    }

    /** Largest minus smallest sample. */
    double range() {
        return max - min;
    }
}
