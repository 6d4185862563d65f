// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.capture.TimeBase;
import org.dutywright.pulse.EdgeUncertainty;
import org.dutywright.pulse.MedianSketch;

/**
 * How well single edges of a channel are known.
 *
 * <p>Noise moves an interpolated instant by noise over slope, times sqrt(2 / 3) where neighbours are independent (the mean
 * of (1 - x)^2 + x^2 over all places x between two samples) and more where they are alike; a fitted one by the gain of its
 * fit. The noise of neighbours has the lag-1 correlation (t - 1) / (t + 1) of a single pole with t samples for an independent
 * one. Between two samples a curve lies off its chord by up to step^2 / 8 times its second derivative over the first: what the
 * samples on the transitions show, and no more than that of a single pole, ln 9 over the duration. The parabola of a fit leaves no more than 0.0006 durations, see {@link EdgeFit}.
 *
 * @param rise transitions into the high state
 * @param fall transitions into the low state
 */
record EdgeFacts(EdgeUncertainty rise, EdgeUncertainty fall) {
    /** Nothing is known. */
    static final EdgeFacts NONE = new EdgeFacts(EdgeUncertainty.NONE, EdgeUncertainty.NONE);

    private static final int MOST_SAMPLES = 64;

    /** With fewer samples on an edge than this, the instant between them is only known to lie between them. */
    private static final int RESOLVED = 2;

    private static final double FIT_REST = 0.0006;

    /** From all transitions of a channel. */
    static EdgeFacts of(PulseStages stages, States states, TimeBase timeBase) throws IOException {
        Direction rise = new Direction(stages.slopes(), true, states, timeBase);
        Direction fall = new Direction(stages.slopes(), false, states, timeBase);
        SpillLog.Reader<Pulse> reader = stages.pulses().reader(1);
        for (Pulse pulse = reader.next(); pulse != null; pulse = reader.next()) {
            if (pulse.startsWithEdge && pulse.edgeSeconds > 0) {
                (pulse.high ? rise : fall).add(pulse);
            }
        }
        return new EdgeFacts(rise.uncertainty(), fall.uncertainty());
    }

    /** Standard deviation of the less certain direction's instants from noise. */
    double noiseSeconds() {
        return Math.max(rise.noiseSeconds(), fall.noiseSeconds());
    }

    /** Standard uncertainty of the less certain direction's instants from everything but noise. */
    double samplingSeconds() {
        return Math.max(rise.withoutNoiseSeconds(), fall.withoutNoiseSeconds());
    }

    /** Transitions of one direction. */
    private static final class Direction {
        private final double secondsPerUnit;
        private final double mostBend;
        private final States states;
        private final double stepSeconds;
        private final double stampSeconds;
        private final boolean even;
        private final MedianSketch seconds = new MedianSketch();
        private final long[] samples = new long[MOST_SAMPLES + 1];
        private final SamplingPhases phases;
        private double fitGains;
        private long fitted;

        Direction(EdgeSlopes slopes, boolean rising, States states, TimeBase timeBase) {
            secondsPerUnit = 1 / slopes.mean(rising);
            mostBend = slopes.mostBend(rising);
            this.states = states;
            stepSeconds = timeBase.stepSeconds();
            stampSeconds = timeBase.stampUncertaintySeconds();
            even = timeBase.sampleRateHz().isPresent() && timeBase.segments().size() == 1;
            phases = new SamplingPhases(stepSeconds);
        }

        void add(Pulse pulse) {
            seconds.add(pulse.edgeSeconds);
            samples[Math.min(MOST_SAMPLES, pulse.edgeSamples)]++;
            phases.add(pulse.startSeconds);
            if (pulse.fitSamples > 0) {
                fitted++;
                fitGains += EdgeFit.NOISE_GAIN
                        * EdgeFit.NOISE_GAIN
                        * Math.min(1, states.samplesPerIndependent() / pulse.fitSamples);
            }
        }

        private boolean resolved() {
            long few = 0;
            for (int i = 0; i < RESOLVED; i++) {
                few += samples[i];
            }
            return 2 * few < seconds.count();
        }

        EdgeUncertainty uncertainty() {
            if (seconds.count() == 0) {
                return EdgeUncertainty.NONE;
            }
            double noise = Math.max(states.levels().lowNoise(), states.levels().highNoise());
            double step = states.codeStep();
            double code = Dither.remaining(step, Dither.proven(step, noise)) * secondsPerUnit;
            double single = resolved() ? 0 : stepSeconds / Math.sqrt(12);
            double repeating = even ? phases.keptSeconds() : stepSeconds / Math.sqrt(12);
            double kept = resolved() ? 0 : repeating;
            return new EdgeUncertainty(
                    noise * secondsPerUnit * noiseGain(noise, 12 * Math.pow(repeating / stepSeconds, 2)),
                    Math.hypot(single, stampSeconds),
                    Math.hypot(kept, stampSeconds),
                    code,
                    resolved() ? shapeSeconds() / Math.sqrt(3) : 0,
                    secondsPerUnit);
        }

        // Where all edges lie at the same place between two samples, that may be on one of them. Noise that is not
        // small against the
        // climb from sample to sample moves the slope as well: to second order 1 + 2 r^2 in the variance.
        private double noiseGain(double noise, double alikePlaces) {
            double independent = states.samplesPerIndependent();
            double alike = (independent - 1) / (independent + 1);
            double climb = Math.min(1, noise * secondsPerUnit / stepSeconds);
            double one = (1 - (1 - alike) * (1 - Math.min(1, alikePlaces)) / 3) * (1 + 2 * climb * climb);
            return Math.sqrt(((seconds.count() - fitted) * one + fitGains) / seconds.count());
        }

        private double shapeSeconds() {
            double duration = seconds.median();
            if (2 * fitted > seconds.count()) {
                return FIT_REST * duration;
            }
            return stepSeconds * stepSeconds / 8 * Math.min(mostBend, Math.log(9) / duration);
        }
    }
}
