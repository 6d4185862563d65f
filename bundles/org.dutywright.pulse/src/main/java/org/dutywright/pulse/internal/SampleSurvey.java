// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.Arrays;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Budget.Shape;
import org.dutywright.pulse.InstrumentErrors;
import org.dutywright.pulse.LevelSummary;

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
 * @param usualMin level that a hundredth of the samples looked at lies below
 * @param usualMax level that a hundredth of the samples looked at lies above
 */
record SampleSurvey(
        long count,
        double min,
        double max,
        double mean,
        double squares,
        double noise,
        CodeStep codes,
        double usualMin,
        double usualMax) {
    /** Beyond it squares lose their meaning; no unit of anything that is recorded needs as much. */
    private static final double MOST = 1e100;

    /** Single values further than so many usual ranges from the usual ones do not matter for the states. */
    private static final double FAR = 16;

    private static final int HUNDREDTH = 100;

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
            min = Math.min(min, Sums.least(values, 0, here));
            max = Math.max(max, Sums.most(values, 0, here));
            double blockMean = Sums.of(values, 0, here) / here;
            double delta = blockMean - mean;
            squares += Sums.ofSquares(values, 0, here, blockMean) + delta * delta * count * here / (count + here);
            mean += delta * here / (count + here);
            count += here;
            windows.take(values, here, blocks.segmentStart());
        }
        double[] sorted = windows.values();
        Arrays.sort(sorted);
        int cut = sorted.length / HUNDREDTH;
        return new SampleSurvey(
                count,
                min,
                max,
                mean,
                squares,
                windows.noise(),
                CodeStep.among(sorted),
                sorted[cut],
                sorted[sorted.length - 1 - cut]);
    }

    /** Smallest sample that may tell of a state: far off the usual ones there are none. */
    double nearMin() {
        double usual = usualMax - usualMin;
        return usual > 0 ? Math.max(min, usualMin - FAR * usual) : min;
    }

    /** Largest sample that may tell of a state. */
    double nearMax() {
        double usual = usualMax - usualMin;
        return usual > 0 ? Math.min(max, usualMax + FAR * usual) : max;
    }

    /** Whether the samples are numbers that can be worked with. */
    boolean isUsable() {
        return min > -MOST && max < MOST && Double.isFinite(squares);
    }

    /** Standard deviation of all samples, 0 for fewer than two. */
    double sd() {
        return count < 2 ? 0 : Math.sqrt(squares / (count - 1));
    }

    /** Root of the mean square, taken from mean and scatter. */
    double rms() {
        return Math.sqrt(mean * mean + squares / count);
    }

    /** What is reported of all samples. */
    LevelSummary summary(InstrumentErrors instrument) {
        double step = codes.known(true);
        Budget budget = Budget.of(
                Component.typeA("noise", noise / Math.sqrt((double) count), Math.max(1, count - 1.0)),
                Component.bounded("code step", Shape.RECTANGULAR, Dither.remaining(step, Dither.proven(step, noise))));
        return new LevelSummary(instrument.with(budget.around(mean)), min, max, rms());
    }

    /** Largest minus smallest sample. */
    double range() {
        return max - min;
    }
}
