// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.util.ArrayList;
import java.util.List;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Budget.Shape;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.MedianSketch;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Transition;

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
            rise = new Direction(channel, true);
            fall = new Direction(channel, false);
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
        private static final double LEAST_CLIMB = 3;
        private static final double STRAIGHT = 0.9;

        private final ChannelContext channel;
        private final boolean rising;
        private final MedianSketch median = new MedianSketch();
        private final Moments moments = new Moments();
        private long unresolved;

        Direction(ChannelContext channel, boolean rising) {
            this.channel = channel;
            this.rising = rising;
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
            List<Component> parts = new ArrayList<>();
            parts.add(Component.typeA("scatter of the transitions", random, Math.max(1, moments.count() - 1.0)));
            if (2 * unresolved > median.count()) {
                double bound = Math.max(channel.stepSeconds() / Math.sqrt(6), seconds / Math.sqrt(3));
                parts.add(Component.normal("fewer than two samples on it", bound));
            } else {
                parts.addAll(resolved(seconds));
            }
            return new Outcome.Single(new Budget(parts).around(seconds));
        }

        private List<Component> resolved(double seconds) {
            PulseSettings settings = channel.settings();
            double share =
                    (settings.get(PulseSettings.UPPER_REFERENCE) - settings.get(PulseSettings.LOWER_REFERENCE)) / 100;
            StateLevels levels = channel.levels();
            double slope = share * levels.swing() / seconds;
            double ending = slopeAtReferences(slope);
            double corner = seconds < WELL_RESOLVED * channel.stepSeconds() ? channel.stepSeconds() / Math.sqrt(6) : 0;
            double noise = Math.max(levels.lowNoise(), levels.highNoise());
            double uSwing = Math.hypot(levels.low().u(), levels.high().u());
            return List.of(
                    Component.normal("few samples on it", corner),
                    Component.normal(
                            "noise at the reference levels",
                            2 * early(ending * channel.stepSeconds() / noise) * noise / ending),
                    Component.bounded("code step", Shape.RECTANGULAR, Math.sqrt(2) * channel.codeKept() / slope),
                    Component.normal("state levels", uSwing / ending),
                    Component.bounded(
                            "the recorder's clock",
                            Shape.RECTANGULAR,
                            seconds * channel.timeBaseRelativeUncertainty()));
        }

        // A straight line is as steep at the reference levels as in the middle. A curve is steeper in the middle than
        // on the
        // whole and may be as flat at one end as an exponential: at 90 % a tenth of the swing a time constant, ln 9 / 8
        // of its mean.
        private double slopeAtReferences(double mean) {
            double secondsPerUnit =
                    rising ? channel.rise().secondsPerUnit() : channel.fall().secondsPerUnit();
            return secondsPerUnit > 0 && secondsPerUnit * mean < STRAIGHT ? mean * Math.log(9) / 8 : mean;
        }

        // The last crossing of the starting level comes late and the first of the ending one early: by up to about the
        // noise
        // over the slope each, where the signal climbs by less than the noise from sample to sample, not where by three
        // times it.
        private static double early(double climbInNoise) {
            return Math.clamp((LEAST_CLIMB - climbInNoise) / LEAST_CLIMB, 0, 1);
        }
    }
}
