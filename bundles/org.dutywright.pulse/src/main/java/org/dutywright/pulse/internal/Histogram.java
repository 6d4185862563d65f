// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;

/**
 * Second pass over a channel: how often each level occurs. Bins are a whole multiple of the code step wide and centred
 * on codes, because bins that are not beat with the codes and show states that are not there.
 */
final class Histogram {
    private static final int MOST_BINS = 4096;
    private static final double ONE_SIGMA_DOWN = 0.1586552539;
    private static final double ONE_SIGMA_UP = 1 - ONE_SIGMA_DOWN;

    private final double min;
    private final double width;
    private final long[] bins;
    private final long count;
    private final long[][] stretches;
    private final long stretchSamples;

    private Histogram(double min, double width, long[] bins, long[][] stretches, long stretchSamples) {
        this.min = min;
        this.width = width;
        this.bins = bins;
        count = Arrays.stream(bins).sum();
        this.stretches = stretches;
        this.stretchSamples = stretchSamples;
    }

    static Histogram of(ChannelBlocks blocks, SampleSurvey survey) throws IOException {
        double range = survey.nearMax() - survey.nearMin();
        // The few values of an ideal signal are no codes: as wide as the swing, a bin would hold both states.
        double step = survey.codes().known(survey.noise() > 0);
        double width = step > range / MOST_BINS
                ? step
                : step > 0 ? step * Math.ceil(range / MOST_BINS / step) : range / MOST_BINS;
        if (!(width > 0)) {
            width = Math.max(Math.ulp(survey.max()), Double.MIN_NORMAL);
        }
        double start = survey.nearMin() - width / 2;
        double scale = 1 / width;
        int length = (int) Math.min(MOST_BINS + 2L, (long) (range * scale) + 2);
        long stretch =
                Math.max(StretchLevels.LEAST_SAMPLES, Math.ceilDiv(survey.count(), (long) StretchLevels.STRETCHES));
        long[][] stretches = new long[Math.toIntExact(Math.ceilDiv(survey.count(), stretch))][length];
        BinCounter counter = new BinCounter(start, scale, stretches);
        while (blocks.next()) {
            int from = 0;
            while (from < blocks.count()) {
                int index = (int) ((blocks.firstSample() + from) / stretch);
                int to = (int) Math.min(blocks.count(), (index + 1) * stretch - blocks.firstSample());
                counter.count(index, blocks.values(), from, to);
                from = to;
            }
        }
        counter.finish();
        long[] bins = new long[length];
        for (long[] part : stretches) {
            for (int i = 0; i < length; i++) {
                bins[i] += part[i];
            }
        }
        return new Histogram(survey.nearMin(), width, bins, stretches, stretch);
    }

    /** The same for each stretch of the recording. */
    List<Histogram> stretches() {
        return Arrays.stream(stretches)
                .map(part -> new Histogram(min, width, part, new long[0][], 0))
                .toList();
    }

    /** Number of samples of a stretch. */
    long stretchSamples() {
        return stretchSamples;
    }

    /** Level below which a share of the samples lies, to the width of a bin. */
    double quantile(double share) {
        return quantile(0, bins.length, share);
    }

    /** Median of the samples below a level. */
    double medianBelow(double level) {
        return quantile(0, firstBinFrom(level), 0.5);
    }

    /** Median of the samples above a level. */
    double medianAbove(double level) {
        return quantile(firstBinFrom(level), bins.length, 0.5);
    }

    /**
     * Half of the range that holds the middle 68 % of the samples on one side of a level, the wider side: for normal noise
     * its standard deviation.
     */
    double spreadAround(double level) {
        int border = firstBinFrom(level);
        double below = quantile(0, border, ONE_SIGMA_UP) - quantile(0, border, ONE_SIGMA_DOWN);
        double above = quantile(border, bins.length, ONE_SIGMA_UP) - quantile(border, bins.length, ONE_SIGMA_DOWN);
        return Math.max(below, above) / 2;
    }

    /** Share of all samples whose bin is centred between two levels. */
    double shareBetween(double from, double to) {
        long inside = 0;
        for (int i = firstBinFrom(from); i < firstBinFrom(to); i++) {
            inside += bins[i];
        }
        return (double) inside / count;
    }

    private double quantile(int from, int to, double share) {
        long total = 0;
        for (int i = from; i < to; i++) {
            total += bins[i];
        }
        double wanted = share * total;
        long passed = 0;
        for (int i = from; i < to; i++) {
            passed += bins[i];
            if (passed > 0 && passed >= wanted) {
                return min + i * width;
            }
        }
        return min + (to - 1) * width;
    }

    /** The first bin with its centre at a level or above. */
    private int firstBinFrom(double level) {
        return (int) Math.clamp(Math.ceil((level - min) / width), 0, bins.length);
    }
}
