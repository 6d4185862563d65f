// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.util.List;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Coverage;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleShape;
import org.dutywright.pulse.CycleShape.InputCycle;
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
        private final ChannelContext channel;
        private final Moments duties = new Moments();
        private final Moments durations = new Moments();
        private final Moments periods = new Moments();
        private final Moments startSlopes = new Moments();
        private final Moments switchSlopes = new Moments();
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
        }

        @Override
        public List<Result> finish() {
            return List.of(
                    new Result("input-duty", "Duty cycle at the input", "%", duty()),
                    new Result("input-pulse-duration", "Pulse duration at the input", "s", duration()));
        }

        private Outcome duty() {
            return durations.count() == 0
                    ? absent()
                    : statistic(duties, 100 / periods.mean() * Math.hypot(uScatter(), uCommon()));
        }

        private Outcome duration() {
            double clock = channel.timeBaseRelativeUncertainty() * durations.mean();
            return durations.count() == 0
                    ? absent()
                    : statistic(durations, Math.hypot(clock, Math.hypot(uScatter(), uCommon())));
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

        // Noise differs from edge to edge, and each counts once.
        private double uScatter() {
            double noise =
                    Math.max(channel.levels().lowNoise(), channel.levels().highNoise());
            double both = Math.hypot(startSlopes.mean(), switchSlopes.mean()) * noise;
            return both / Math.sqrt((double) durations.count());
        }

        private double uCommon() {
            double code = Math.hypot(startSlopes.mean(), switchSlopes.mean()) * channel.codeStep() / Math.sqrt(12);
            return Math.hypot(code, Math.sqrt(2) * channel.edgeSamplingSeconds());
        }

        private static Outcome statistic(Moments moments, double u) {
            double u95 = Coverage.known(moments.mean(), u).u95();
            return new Outcome.OfCycles(
                    new Statistic(moments.mean(), moments.min(), moments.max(), moments.sd(), u, u95));
        }
    }
}
