// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.util.List;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Coverage;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.MedianSketch;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Transition;
import org.dutywright.pulse.Uncertain;

/**
 * Median transition durations of undisturbed cycles, 10 % to 90 % level, rising and falling, in seconds (IEEE Std 181-2011;
 * the trade says rise and fall time).
 *
 * <p>A median is used because a few slow edges are events of their own. Its uncertainty: sqrt(pi / 2) times the standard
 * deviation over the root of the number, which real scatter and noise make; the reference instants lie between samples,
 * so each is uncertain by a step over sqrt(12) where fewer than two samples lie on the edge, else by the code step over
 * the slope; the clock; and the levels, whose error moves both reference levels. With fewer than two samples on it an edge
 * may be anything from instant to twice what the straight lines show, so the value over sqrt(3) is taken. With fewer than
 * eight, a straight line between the samples around a reference level may reach past the corner where the edge begins
 * (a ramp has 10 % of its length there, less than a step), so each instant is uncertain by a step over sqrt(12).
 */
@ServiceProvider(Measurement.class)
public final class TransitionMeasurement implements Measurement {
    /** For the service loader. */
    public TransitionMeasurement() {}

    @Override
    public String id() {
        return "transition";
    }

    @Override
    public String title() {
        return "Transition durations, 10 % to 90 %";
    }

    @Override
    public Run start(ChannelContext channel) {
        return new Durations(channel);
    }

    private static final class Durations implements Run {
        private final Direction rise;
        private final Direction fall;

        Durations(ChannelContext channel) {
            rise = new Direction(channel);
            fall = new Direction(channel);
        }

        @Override
        public void transition(Transition transition, boolean disturbed) {
            if (!disturbed && transition.durationSeconds() > 0) {
                (transition.rising() ? rise : fall).add(transition);
            }
        }

        @Override
        public void cycle(Cycle cycle) {}

        @Override
        public List<Result> finish() {
            return List.of(
                    new Result("transition.rise", "Transition, rising", "s", rise.outcome()),
                    new Result("transition.fall", "Transition, falling", "s", fall.outcome()));
        }
    }

    private static final class Direction {
        private static final int RESOLVED = 2;
        private static final int WELL_RESOLVED = 8;

        private final ChannelContext channel;
        private final MedianSketch median = new MedianSketch();
        private final Moments moments = new Moments();
        private long unresolved;

        Direction(ChannelContext channel) {
            this.channel = channel;
        }

        void add(Transition transition) {
            median.add(transition.durationSeconds());
            moments.add(transition.durationSeconds());
            if (transition.samplesOnEdge() < RESOLVED) {
                unresolved++;
            }
        }

        Outcome outcome() {
            if (median.count() == 0) {
                return new Outcome.Absent("no transition of an undisturbed cycle passed both reference levels");
            }
            double seconds = median.median();
            double random = Math.sqrt(Math.PI / 2 / moments.count()) * moments.sd();
            Uncertain value = Coverage.combine(seconds, random, Math.max(1, moments.count() - 1.0), other(seconds));
            return new Outcome.Single(value);
        }

        private double other(double seconds) {
            double share = (channel.settings().get(PulseSettings.UPPER_REFERENCE)
                            - channel.settings().get(PulseSettings.LOWER_REFERENCE))
                    / 100;
            double slope = share * channel.levels().swing() / seconds;
            if (2 * unresolved > median.count()) {
                return Math.max(channel.stepSeconds() / Math.sqrt(6), seconds / Math.sqrt(3));
            }
            double corner = seconds < WELL_RESOLVED * channel.stepSeconds() ? channel.stepSeconds() : 0;
            double instant = Math.hypot(channel.codeStep() / slope, corner) / Math.sqrt(12);
            double uSwing = Math.hypot(
                    channel.levels().low().u(), channel.levels().high().u());
            double levels = seconds * uSwing / channel.levels().swing();
            double clock = seconds * channel.timeBaseRelativeUncertainty();
            return Math.hypot(Math.sqrt(2) * instant, Math.hypot(levels, clock));
        }
    }
}
