// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.util.List;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Budget.Shape;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleShape;
import org.dutywright.pulse.CycleShape.InputCycle;
import org.dutywright.pulse.EdgeUncertainty;
import org.dutywright.pulse.InstrumentErrors;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Statistic;

/**
 * Duty cycle in percent and pulse duration in seconds as the input of the module sees them: a rising edge counts where the
 * signal passes the input's rising threshold, a falling one where it passes the falling one. Where edges take time that
 * differs from what the 50 % level tells: with linear edges of length r from a low level L over a swing S, thresholds R and
 * F make d + r (1 - (R + F - 2 L) / S) of a high pulse of duration d. Over the undisturbed cycles whose three edges the
 * input sees, each once.
 */
@ServiceProvider(Measurement.class)
public final class InputDutyMeasurement implements Measurement {
    /** Why there is no number where the thresholds are not known. */
    static final String UNKNOWN = "the thresholds of the module's input are not known";

    /** For the service loader. */
    public InputDutyMeasurement() {}

    @Override
    public String id() {
        return "input-duty";
    }

    @Override
    public String title() {
        return "Duty cycle and pulse duration at the thresholds of the module's input";
    }

    @Override
    public Run start(ChannelContext channel) {
        return new AtInput(channel);
    }

    private static final class AtInput implements Run {
        /** Noise hardly ever passes a level that the signal passes by so many standard deviations a sample. */
        private static final double LEAST_CLIMB = 3;

        private final ChannelContext channel;
        private final Moments duties = new Moments();
        private final Moments durations = new Moments();
        private final Moments periods = new Moments();
        private final Moments startSlopes = new Moments();
        private final Moments switchSlopes = new Moments();
        private final Moments startBends = new Moments();
        private final Moments switchBends = new Moments();
        /** Of the pulse duration at the input against that at the 50 % level: what the sensor moves is in neither. */
        private final Moments differences = new Moments();

        private boolean known;
        private long unseen;

        AtInput(ChannelContext channel) {
            this.channel = channel;
        }

        @Override
        public void cycle(Cycle cycle) {}

        @Override
        public void cycle(Cycle cycle, CycleShape shape) {
            known |= shape.input().isPresent();
            if (cycle.disturbed() || shape.input().isEmpty()) {
                return;
            }
            InputCycle input = shape.input().get();
            if (!input.isSeen()) {
                unseen++;
                return;
            }
            duties.add(input.dutyPercent());
            durations.add(input.pulseDurationSeconds());
            periods.add(input.periodSeconds());
            startSlopes.add(input.startSecondsPerUnit());
            switchSlopes.add(input.switchSecondsPerUnit());
            startBends.add(input.startBendSeconds());
            switchBends.add(input.switchBendSeconds());
            differences.add(input.pulseDurationSeconds() - cycle.pulseDurationSeconds());
        }

        @Override
        public List<Result> finish() {
            return List.of(
                    new Result("input-duty", "Duty cycle at the input", "%", duty()),
                    new Result("input-pulse-duration", "Pulse duration at the input", "s", duration()));
        }

        private Outcome duty() {
            return durations.count() == 0 ? absent() : statistic(duties, edges().times(100 / periods.mean()));
        }

        private Outcome duration() {
            if (durations.count() == 0) {
                return absent();
            }
            double clock = channel.timeBaseRelativeUncertainty() * durations.mean();
            return statistic(
                    durations,
                    edges().and(List.of(Component.bounded("the recorder's clock", Shape.RECTANGULAR, clock))));
        }

        private Outcome absent() {
            if (!known) {
                return new Outcome.Absent(UNKNOWN);
            }
            return new Outcome.Absent(
                    unseen == 0
                            ? CycleStatistics.NO_CYCLE
                            : "in no undisturbed cycle does the signal pass both thresholds of the module's input once a"
                                    + " pulse");
        }

        /**
         * Of the mean duration: noise, which differs from edge to edge, and each edge counts once; what bends between the
         * samples, at its full size because it has one sign; that the first of several passages in noise counts; what
         * sampling and the code step do to all edges alike; and the recorder's errors, for the thresholds are those of another
         * instrument. From one sample to the next noise makes slopes look steeper than they are, so they are taken as no steeper
         * than in the middle of the edge, and the noise as no less than the durations scatter against those at the 50 % level, whose own
         * noise is known.
         */
        private Budget edges() {
            EdgeUncertainty start = channel.starting();
            EdgeUncertainty end = channel.switching();
            double root = Math.sqrt((double) durations.count());
            double startSlope = Math.max(startSlopes.mean(), start.secondsPerUnit());
            double switchSlope = Math.max(switchSlopes.mean(), end.secondsPerUnit());
            double slopes = Math.hypot(startSlope, switchSlope);
            double noise =
                    Math.max(channel.levels().lowNoise(), channel.levels().highNoise());
            double places = Math.hypot(start.samplingScatterSeconds(), end.samplingScatterSeconds());
            Budget recorder = new Budget(InstrumentErrors.of(channel.settings(), channel.unit())
                            .components(channel.levels().high().value()))
                    .times(startSlope + switchSlope);
            return Budget.of(
                            Component.typeA(
                                    "noise at the edges",
                                    Math.max(slopes * noise * interpolated(), scatter(start, end)) / root,
                                    Double.POSITIVE_INFINITY),
                            Component.normal(
                                    "noise that passes first",
                                    Math.abs(early(startSlope, noise) - early(switchSlope, noise))),
                            Component.normal("bend of the starting edges", beyondScatter(startBends)),
                            Component.normal("bend of the switching edges", beyondScatter(switchBends)),
                            Component.normal("sampling, places that differ", places / root),
                            Component.bounded(
                                    "sampling of the starting edges", Shape.RECTANGULAR, start.samplingKeptSeconds()),
                            Component.bounded(
                                    "sampling of the switching edges", Shape.RECTANGULAR, end.samplingKeptSeconds()),
                            Component.rectangular("code step at the edges", slopes * channel.codeStep() / 2))
                    .and(recorder.components());
        }

        // The mean of (1 - x)^2 + x^2 over all places x between two samples, more where their noise is alike, see
        // EdgeFacts
        private double interpolated() {
            double alike = (channel.samplesPerIndependent() - 1) / (channel.samplesPerIndependent() + 1);
            return Math.sqrt(1 - (1 - alike) / 3);
        }

        private double scatter(EdgeUncertainty start, EdgeUncertainty end) {
            double middle = Math.hypot(start.noiseSeconds(), end.noiseSeconds());
            return Math.sqrt(Math.max(0, differences.sd() * differences.sd() - middle * middle));
        }

        // By up to about the noise over the slope where the signal climbs by less than the noise from sample to sample,
        // not
        // where by three times it.
        private double early(double secondsPerUnit, double noise) {
            double climb = channel.stepSeconds() / secondsPerUnit;
            return noise > 0 && secondsPerUnit > 0
                    ? noise * secondsPerUnit * Math.clamp((LEAST_CLIMB - climb / noise) / LEAST_CLIMB, 0, 1)
                    : 0;
        }

        // The size of a mean without what its own scatter adds to it.
        private static double beyondScatter(Moments moments) {
            double mean = moments.mean();
            return Math.sqrt(Math.max(0, mean * mean - moments.sd() * moments.sd() / moments.count()));
        }

        private static Outcome statistic(Moments moments, Budget budget) {
            return new Outcome.OfCycles(new Statistic(
                    moments.mean(), moments.min(), moments.max(), moments.sd(), budget.u(), budget.u95(), budget));
        }
    }
}
