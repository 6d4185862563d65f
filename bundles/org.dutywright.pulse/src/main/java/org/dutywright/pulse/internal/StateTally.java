// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Budget.Shape;
import org.dutywright.pulse.Uncertain;

/** What the pulses of one state tell of its level and noise. */
final class StateTally {
    /** Pulses whose median gives the level that the state started with. */
    private static final int FIRST = 9;

    /** Less than so many standard deviations are noise and no ringing. */
    private static final double RINGING_SIGMAS = 2;

    /** With plateaus in fewer pulses than this share, the samples close to transitions must do as well. */
    private static final double LEAST_SHARE = 0.1;

    /** A sample within the state but close to a transition may be off by up to the reference level's 10 %. */
    private static final double UNSETTLED = 0.1 / Math.sqrt(12);

    /** A single pole has this share of its swing left between one and three durations after it reached 90 %. */
    private static final double NEAR_EDGES = 0.005;

    /** Noise alone moves the mean of some hundred samples or more off their middle by far less than this share of it. */
    private static final double SKEWED = 0.2;

    /** From this share of the swing on a trend within pulses counts, if it is beyond doubt. */
    private static final double DROOPS = 0.01;

    private static final double DROOP_SIGMAS = 6;

    private static final int LONG_PULSE = 64;

    private final double centre;
    private final double[] first = new double[FIRST];
    private int firstCount;
    private long firstSamples;
    private final long[] lengths = new long[LONG_PULSE + 1];
    private long pulses;
    private long withPlateau;
    private final PlateauBins plateaus;
    private final SampleBins samples;
    private long settledSamples;
    private double settledSum;
    private double extremeSum;
    private long trends;
    private double trendSum;
    private double trendSquares;
    private final double towardsOther;
    private final PlateauScatter scatter;
    private double slopeSum;

    /**
     * An empty tally.
     *
     * @param centre a level near the state
     * @param swing distance of the two states, about; negative for the high state, from which the other one lies below
     */
    StateTally(double centre, double swing) {
        this.centre = centre;
        towardsOther = 1 / swing;
        scatter = new PlateauScatter(swing);
        plateaus = new PlateauBins(centre, Math.abs(swing));
        samples = new SampleBins(centre, Math.abs(swing));
    }

    void samples(double[] values, int from, int to) {
        samples.add(values, from, to);
    }

    void add(Pulse pulse) {
        pulses++;
        extremeSum += pulse.extreme - centre;
        if (pulse.startsWithEdge && pulse.endsWithEdge) {
            lengths[(int) Math.min(LONG_PULSE, pulse.samples)]++;
        }
        if (pulse.settledSamples > 0) {
            settledSamples += pulse.settledSamples;
            settledSum += pulse.settledSamples * (pulse.settled - centre);
        }
        if (pulse.plateauSamples > 0) {
            withPlateau++;
            plateaus.add(pulse);
            scatter.add(pulse);
        }
        if (pulse.plateauSamples > 2) {
            // a runt or a level that shifts in the middle of a pulse counts as one swing at most
            double trend = Math.clamp(pulse.plateauTrend * pulse.samples * towardsOther, -1, 1);
            slopeSum += pulse.plateauTrend;
            trends++;
            trendSum += trend;
            trendSquares += trend * trend;
        }
        if (pulse.startsWithEdge && pulse.levelSamples() > 0 && firstCount < FIRST) {
            first[firstCount++] = pulse.level();
            firstSamples += pulse.levelSamples();
        }
    }

    long pulses() {
        return pulses;
    }

    /** Median number of samples of whole pulses, at most 64; 64 without any. */
    int medianSamples() {
        long total = Arrays.stream(lengths).sum();
        long passed = 0;
        for (int i = 0; i <= LONG_PULSE; i++) {
            passed += lengths[i];
            if (passed > 0 && 2 * passed >= total) {
                return i;
            }
        }
        return LONG_PULSE;
    }

    /** Scatter of the samples within the plateaus, about their trend where they droop; else what is given. */
    double noise(double otherwise) {
        PlateauBins.Total total = plateaus.total();
        boolean droops = droop() > DROOPS && droop() > DROOP_SIGMAS * uDroop();
        double squares = droops ? total.squares() - total.trendSquares() : total.squares();
        long degrees = total.samples() - (droops ? 2 : 1) * total.pulses();
        return degrees > 0 ? Math.sqrt(Math.max(0, squares) / degrees) : otherwise;
    }

    /** Whether the mean of the samples lies off their middle by more than noise and code step explain. */
    private boolean isSkewed(double noise, double codeStep) {
        double unsure = Math.max(codeStep, Math.max(2 * samples.width(), SKEWED * noise));
        return samples.looked() > 0 && Math.abs(plateaus.total().level() - samples.median()) > unsure;
    }

    private boolean plateausDo() {
        return withPlateau > 0 && withPlateau >= LEAST_SHARE * pulses;
    }

    /**
     * The level: mean of the samples outside transitions and aberrations where there are enough of them, or their shorth
     * where they are skewed. Runts and the smaller part of a level that has shifted are left out.
     */
    double level(double noise, double codeStep) {
        if (plateausDo()) {
            return isSkewed(noise, codeStep)
                    ? samples.shorth()
                    : plateaus.total().level();
        }
        if (settledSamples > 0) {
            return centre + settledSum / settledSamples;
        }
        return pulses > 0 ? centre + extremeSum / pulses : centre;
    }

    /**
     * The level with its budget: noise, code step, and what is left of the transitions in the samples.
     *
     * @param edgeSamples usual number of samples on a transition into the state, 0 where it is not known
     */
    Uncertain level(double noise, double codeStep, double swing, double edgeSamples) {
        List<Component> parts = new ArrayList<>();
        double scatter = Dither.proven(codeStep, noise);
        Shape shape = scatter > 0 ? Shape.ARCSINE : Shape.RECTANGULAR;
        parts.add(Component.bounded("code step", shape, Dither.remaining(codeStep, scatter)));
        if (plateausDo()) {
            PlateauBins.Total total = plateaus.total();
            boolean skewed = isSkewed(noise, codeStep);
            parts.add(skewed ? shorthPart(noise) : noisePart(noise, total));
            parts.add(settling(total, swing, edgeSamples));
            parts.add(ringing(total, noise));
            return new Budget(parts).around(level(noise, codeStep));
        }
        double toExtreme = Math.abs(centre + extremeSum / Math.max(1, pulses) - level(noise, codeStep));
        parts.add(Component.normal("noise", noise / Math.sqrt(Math.max(1.0, (double) settledSamples))));
        parts.add(Component.normal("samples close to transitions", Math.max(UNSETTLED * swing, toExtreme)));
        return new Budget(parts).around(level(noise, codeStep));
    }

    // The scatter of a shorth shrinks with the cube root of the number of independent samples only.
    private Component shorthPart(double noise) {
        double independent = Math.max(1, samples.looked() / samplesPerIndependent(noise));
        return Component.normal("noise", Math.hypot(noise / Math.cbrt(independent), samples.width()));
    }

    // The scatter of the samples and that of the means of pulses both tell it; where samples are alike the second is
    // larger.
    private Component noisePart(double noise, PlateauBins.Total total) {
        double fromSamples = noise / Math.sqrt((double) total.samples());
        double fromPulses = scatter.perSample() / Math.sqrt((double) total.samples());
        return fromPulses > fromSamples
                ? Component.typeA("noise", fromPulses, Math.max(1, scatter.degrees()))
                : Component.typeA("noise", fromSamples, Math.max(1.0, (double) (total.samples() - total.pulses())));
    }

    // An aberration may last longer than the samples that are left out for it. What the ones right after them are off
    // the later
    // ones tells how far it takes the mean along; it is not corrected for, because it need not have died away there.
    private Component ringing(PlateauBins.Total total, double noise) {
        double missing = Math.abs(total.earlyMissing()) / total.samples();
        double independent = total.early() / samplesPerIndependent(noise);
        double fromNoise = independent == 0 ? 0 : noise * total.early() / Math.sqrt(independent) / total.samples();
        return Component.normal("ringing after the edges", missing > RINGING_SIGMAS * fromNoise ? missing : 0);
    }

    // Short pulses end before the level is reached. What is missing follows from the slope of their plateaus; it is
    // taken at its full size, because it has one sign.
    private Component settling(PlateauBins.Total total, double swing, double edgeSamples) {
        double near = NEAR_EDGES * swing * total.nearEdges() / total.samples();
        if (near == 0 || trends < 2) {
            return Component.normal("settling", near);
        }
        double length = (double) total.samples() / total.pulses();
        double run = slopeSum / trends * length;
        double missing = Settling.shareOfRun(length, edgeSamples) * Math.abs(run);
        return Component.normal("settling", Math.hypot(near, missing));
    }

    /** Number of samples that are as good as one independent one, at least 1. */
    double samplesPerIndependent(double noise) {
        return scatter.samplesPerIndependent(noise);
    }

    /** Mean change of the level over a pulse, towards the other state, as a share of the swing. */
    double droop() {
        return trends == 0 ? 0 : trendSum / trends;
    }

    /** Standard uncertainty of {@link #droop} from the scatter of the pulses; 1 for fewer than two. */
    double uDroop() {
        if (trends < 2) {
            return 1;
        }
        double variance = Math.max(0, trendSquares - trendSum * trendSum / trends) / (trends - 1.0);
        return Math.sqrt(variance / trends);
    }

    /** Level of the first pulses, to which later ones are compared; the overall level where no pulse has a plateau. */
    double firstLevel() {
        if (firstCount == 0) {
            return level(0, 0);
        }
        double[] sorted = Arrays.copyOf(first, firstCount);
        Arrays.sort(sorted);
        return sorted[firstCount / 2];
    }

    /** Standard uncertainty of {@link #firstLevel} from noise; a median scatters by sqrt(pi / 2) more than a mean. */
    double uFirstLevel(double noise) {
        return noise * Math.sqrt(Math.PI / 2 * samplesPerIndependent(noise) / Math.max(1, firstSamples));
    }
}
