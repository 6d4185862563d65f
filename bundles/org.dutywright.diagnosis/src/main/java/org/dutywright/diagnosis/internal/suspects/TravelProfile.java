// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where in the travel two channels differ: sums over slices of travel, and how often each slice was entered. */
final class TravelProfile {
    private static final int SLICES = 50;
    private static final double SLICE_PERCENT = 2;
    /** A place that is wider than this share of the travel covered is no spot. */
    private static final double WIDEST_SHARE = 0.34;
    /** Slices with fewer instants say nothing. */
    private static final int FEWEST = 2;

    private final long[] counts = new long[SLICES];
    private final double[] sums = new double[SLICES];
    private final int[] visits = new int[SLICES];
    private int current = -1;

    /**
     * A place in the travel where the channels differ from what they do elsewhere.
     *
     * @param fromPercent where it begins
     * @param toPercent where it ends
     * @param differencePercent mean difference there, relative to elsewhere
     * @param visits how often the travel passed into its worst slice
     * @param coveredPercent travel that the recording covers
     */
    record Spot(double fromPercent, double toPercent, double differencePercent, int visits, double coveredPercent) {}

    void add(double travelPercent, double differencePercent) {
        int slice = Math.clamp((int) Math.floor(travelPercent / SLICE_PERCENT), 0, SLICES - 1);
        counts[slice]++;
        sums[slice] += differencePercent;
        if (slice != current) {
            visits[slice]++;
            current = slice;
        }
    }

    /** What follows does not continue what came before. */
    void leave() {
        current = -1;
    }

    /**
     * The place that sticks out, empty if none does or it was passed only once.
     *
     * @param leastPercent smallest difference, relative to elsewhere, that counts
     */
    Optional<Spot> spot(double leastPercent) {
        List<Integer> covered = new ArrayList<>();
        for (int i = 0; i < SLICES; i++) {
            if (counts[i] >= FEWEST) {
                covered.add(i);
            }
        }
        if (covered.size() < 5) {
            return Optional.empty();
        }
        double usual = median(covered.stream().map(this::mean).sorted().toList());
        int worst = covered.stream()
                .max((a, b) -> Double.compare(Math.abs(mean(a) - usual), Math.abs(mean(b) - usual)))
                .orElseThrow();
        double peak = mean(worst) - usual;
        List<Integer> high = covered.stream()
                .filter(i -> Math.abs(mean(i) - usual) > Math.abs(peak) / 2)
                .toList();
        int width = high.get(high.size() - 1) - high.get(0) + 1;
        boolean sticksOut = Math.abs(peak) >= leastPercent && width <= WIDEST_SHARE * covered.size();
        if (!sticksOut || visits[worst] < 2) {
            return Optional.empty();
        }
        return Optional.of(new Spot(
                high.get(0) * SLICE_PERCENT,
                (high.get(high.size() - 1) + 1) * SLICE_PERCENT,
                peak,
                visits[worst],
                covered.size() * SLICE_PERCENT));
    }

    private double mean(int slice) {
        return sums[slice] / counts[slice];
    }

    private static double median(List<Double> sorted) {
        int middle = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(middle) : (sorted.get(middle - 1) + sorted.get(middle)) / 2;
    }
}
