// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.dutywright.pulse.PulseSettings;

/**
 * Two states that show only in parts of a recording: because the levels drift through each other's place, or because the
 * signal floats between them for a while. Each stretch is looked at by itself with the rule for the whole recording. Those
 * that show two states must agree in their swing and make up a tenth of the recording; any other stretch is given the
 * levels of the nearest of them.
 */
final class StretchLevels {
    /** Stretches of the recording. */
    static final int STRETCHES = 64;

    /** A stretch has at least so many samples, or a period might not fit into one. */
    static final int LEAST_SAMPLES = 4096;

    private static final double LEAST_SHARE = 0.1;

    /** Swings further than this share from the median one are those of something else. */
    private static final double SWING_TOLERANCE = 0.3;

    /**
     * Provisional levels of a stretch.
     *
     * @param firstSample first sample of the stretch
     * @param low level of the low state
     * @param high level of the high state
     * @param noise standard deviation of the noise
     */
    record Pair(long firstSample, double low, double high, double noise) {
        double swing() {
            return high - low;
        }
    }

    /** Looks at one stretch; empty if it has no two states. */
    interface Test {
        /** The two states of a histogram. */
        Optional<Pair> pair(Histogram stretch, long firstSample);
    }

    private final List<Pair> all;

    private StretchLevels(List<Pair> all) {
        this.all = List.copyOf(all);
    }

    /** The levels along a recording, empty if too little of it shows two states. */
    static Optional<StretchLevels> of(Histogram whole, Test test) {
        List<Histogram> stretches = whole.stretches();
        List<Optional<Pair>> pairs = new ArrayList<>();
        for (int i = 0; i < stretches.size(); i++) {
            pairs.add(test.pair(stretches.get(i), whole.stretchSamples() * i));
        }
        List<Pair> seen = pairs.stream().flatMap(Optional::stream).toList();
        if (seen.isEmpty()) {
            return Optional.empty();
        }
        double swing = seen.stream().mapToDouble(Pair::swing).sorted().toArray()[seen.size() / 2];
        List<Pair> agreeing = seen.stream()
                .filter(it -> Math.abs(it.swing() - swing) <= SWING_TOLERANCE * swing)
                .toList();
        if (stretches.size() < 2 || agreeing.size() < LEAST_SHARE * stretches.size()) {
            return Optional.empty();
        }
        List<Pair> all = new ArrayList<>();
        for (int i = 0; i < stretches.size(); i++) {
            long first = whole.stretchSamples() * i;
            Pair nearest = agreeing.stream()
                    .min(Comparator.comparingLong(it -> Math.abs(it.firstSample() - first)))
                    .orElseThrow();
            all.add(new Pair(first, nearest.low(), nearest.high(), nearest.noise()));
        }
        return Optional.of(new StretchLevels(all));
    }

    /** Median noise of the stretches. */
    double noise() {
        return all.stream().mapToDouble(Pair::noise).sorted().toArray()[all.size() / 2];
    }

    /** The levels for the edge finder; the whole recording's are those of the stretch with the median low level. */
    LevelTrack track(PulseSettings settings) throws IOException {
        List<Pair> byLow =
                all.stream().sorted(Comparator.comparingDouble(Pair::low)).toList();
        Pair median = byLow.get(byLow.size() / 2);
        RecordSpill changes = new RecordSpill(TrackWriter.WIDTH);
        for (Pair pair : all) {
            changes.add((double) pair.firstSample(), pair.low(), pair.high());
        }
        return LevelTrack.along(
                Thresholds.of(median.low(), median.high(), noise(), noise(), settings), noise(), settings, changes);
    }
}
