// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * Where in the travel two channels differ: the mean difference of each visit to each slice of the travel. A visit ends
 * once the travel has gone {@value #AWAY_SLICES} slices away, so that noise at a border makes no new one.
 */
final class TravelProfile {
    private static final int SLICES = 50;
    private static final double SLICE_PERCENT = 2;
    private static final int AWAY_SLICES = 3;
    /** With fewer slices there is no elsewhere to compare a place with. */
    private static final int FEWEST_SLICES = 5;
    /** A place that is wider than this share of the travel covered is no spot. */
    private static final double WIDEST_SHARE = 0.34;

    private final SummaryStatistics[] visits = new SummaryStatistics[SLICES];
    private final double[] openSums = new double[SLICES];
    private final long[] openCounts = new long[SLICES];
    private final boolean[] away = new boolean[SLICES];

    TravelProfile() {
        Arrays.setAll(visits, i -> new SummaryStatistics());
    }

    /**
     * A place in the travel where the channels differ more than elsewhere, each time.
     *
     * @param fromPercent where it begins
     * @param toPercent where it ends
     * @param differencePercent mean difference there, relative to elsewhere
     * @param visits how often the travel came to its worst slice
     * @param coveredPercent travel that the recording covers
     */
    record Spot(double fromPercent, double toPercent, double differencePercent, long visits, double coveredPercent) {}

    void add(double travelPercent, double differencePercent) {
        int slice = Math.clamp((int) Math.floor(travelPercent / SLICE_PERCENT), 0, SLICES - 1);
        if (away[slice]) {
            endVisit(slice);
            away[slice] = false;
        }
        openSums[slice] += differencePercent;
        openCounts[slice]++;
        Arrays.fill(away, 0, Math.max(0, slice - AWAY_SLICES + 1), true);
        Arrays.fill(away, Math.min(SLICES, slice + AWAY_SLICES), SLICES, true);
    }

    private void endVisit(int slice) {
        if (openCounts[slice] > 0) {
            visits[slice].addValue(openSums[slice] / openCounts[slice]);
            openSums[slice] = 0;
            openCounts[slice] = 0;
        }
    }

    /**
     * The place that sticks out; empty if none does, if it was visited only once, or if the visits do not agree. To be
     * asked when all is added.
     *
     * @param leastPercent smallest difference, beyond that elsewhere, that counts
     */
    Optional<Spot> spot(double leastPercent) {
        IntStream.range(0, SLICES).forEach(this::endVisit);
        List<Integer> covered = IntStream.range(0, SLICES)
                .filter(i -> visits[i].getN() > 0)
                .boxed()
                .toList();
        if (covered.size() < FEWEST_SLICES) {
            return Optional.empty();
        }
        double usual =
                new Median().evaluate(covered.stream().mapToDouble(this::mean).toArray());
        int worst = covered.stream()
                .max(Comparator.comparingDouble(i -> Math.abs(mean(i) - usual)))
                .orElseThrow();
        double peak = mean(worst) - usual;
        List<Integer> place = covered.stream()
                .filter(i -> Math.abs(mean(i) - usual) > Math.abs(peak) / 2)
                .toList();
        int first = place.get(0);
        int last = place.get(place.size() - 1);
        boolean narrow = last - first + 1 <= WIDEST_SHARE * covered.size();
        boolean sticksOut = Math.abs(mean(worst)) - Math.abs(usual) >= leastPercent;
        if (!narrow || !sticksOut || !repeats(visits[worst], peak)) {
            return Optional.empty();
        }
        return Optional.of(new Spot(
                first * SLICE_PERCENT,
                (last + 1) * SLICE_PERCENT,
                peak,
                visits[worst].getN(),
                covered.size() * SLICE_PERCENT));
    }

    private static boolean repeats(SummaryStatistics visits, double peak) {
        return visits.getN() >= 2 && visits.getStandardDeviation() <= Math.abs(peak) / 2;
    }

    private double mean(int slice) {
        return visits[slice].getMean();
    }
}
