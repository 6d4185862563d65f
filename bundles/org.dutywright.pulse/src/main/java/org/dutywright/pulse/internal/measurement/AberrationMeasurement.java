// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.util.List;
import org.dutywright.pulse.Aberration;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Budget.Shape;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Transition;
import org.dutywright.pulse.Uncertain;

/**
 * Overshoot and undershoot of the transitions of undisturbed cycles, each direction for itself, in percent of the amplitude
 * (IEEE Std 181-2011): how far the extreme sample of the post-transition aberration region lies beyond the level of the state
 * reached (overshoot), and that of the pre-transition region beyond the level of the state left (undershoot; the trade's
 * preshoot is a deprecated term). See {@link Aberration} for the region. A signal that stays short of the level counts as 0.
 *
 * <p>The extreme of n samples of a flat state is already above it by noise, in the mean by the expected maximum of n normal
 * values; beside a sharp peak noise adds nothing. So between nothing and this much is too much, and up to the bend of the
 * signal between the samples is missing. Nothing is corrected for it; the budget has noise as an error that is either none or
 * all of it, so that its interval reaches down to the flat state. The rest is scatter, levels and code step.
 */
@ServiceProvider(Measurement.class)
public final class AberrationMeasurement implements Measurement {
    /** For the service loader. */
    public AberrationMeasurement() {}

    @Override
    public String id() {
        return "aberration";
    }

    @Override
    public String title() {
        return "Overshoot and undershoot beside the transitions";
    }

    @Override
    public Run start(ChannelContext channel) {
        return new Aberrations(channel);
    }

    private static final class Aberrations implements Run {
        private final Side overshootRise;
        private final Side overshootFall;
        private final Side undershootRise;
        private final Side undershootFall;

        Aberrations(ChannelContext channel) {
            StateLevels levels = channel.levels();
            overshootRise = new Side(channel, levels.high(), levels.highNoise());
            overshootFall = new Side(channel, levels.low(), levels.lowNoise());
            undershootRise = new Side(channel, levels.low(), levels.lowNoise());
            undershootFall = new Side(channel, levels.high(), levels.highNoise());
        }

        @Override
        public void transition(Transition transition, boolean disturbed) {
            if (!disturbed) {
                (transition.rising() ? overshootRise : overshootFall).add(transition.after());
                (transition.rising() ? undershootRise : undershootFall).add(transition.before());
            }
        }

        @Override
        public void cycle(Cycle cycle) {}

        @Override
        public List<Result> finish() {
            return List.of(
                    new Result("overshoot.rise", "Overshoot, rising", "%", overshootRise.outcome()),
                    new Result("overshoot.fall", "Overshoot, falling", "%", overshootFall.outcome()),
                    new Result("undershoot.rise", "Undershoot, rising", "%", undershootRise.outcome()),
                    new Result("undershoot.fall", "Undershoot, falling", "%", undershootFall.outcome()));
        }
    }

    private static final class Side {
        private final ChannelContext channel;
        private final Uncertain level;
        private final double noise;
        private final Moments percents = new Moments();
        private final Moments tooMuch = new Moments();
        private final Moments tooLittle = new Moments();

        Side(ChannelContext channel, Uncertain level, double noise) {
            this.channel = channel;
            this.level = level;
            this.noise = noise;
        }

        void add(Aberration aberration) {
            if (aberration.isKnown()) {
                double swing = channel.levels().swing();
                percents.add(100 * Math.max(0, aberration.beyond()) / swing);
                tooMuch.add(100 * Math.min(Math.max(0, aberration.beyond()), highest(aberration.samples())) / swing);
                tooLittle.add(100 * aberration.bend() / swing);
            }
        }

        // Expected maximum of n independent normal values, sqrt(2 ln n) from above (exact 1.87 sigma for 20: 2.45).
        private double highest(int samples) {
            return noise * Math.sqrt(2 * Math.log(Math.max(1, samples)));
        }

        Outcome outcome() {
            if (percents.count() == 0) {
                return new Outcome.Absent("no undisturbed transition has samples of its states around it");
            }
            double perUnit = 100 / channel.levels().swing();
            Budget budget = Budget.of(
                    Component.typeA(
                            "scatter",
                            percents.sd() / Math.sqrt((double) percents.count()),
                            Math.max(1, percents.count() - 1.0)),
                    Component.bounded("noise at the extreme", Shape.ARCSINE, tooMuch.mean() / Math.sqrt(2)),
                    Component.rectangular("bend between the samples", tooLittle.mean()),
                    Component.rectangular("code step", perUnit * channel.codeStep() / 2),
                    Component.normal("level of the state", perUnit * level.u()));
            return new Outcome.OfCycles(new Statistic(
                    percents.mean(), percents.min(), percents.max(), percents.sd(), budget.u(), budget.u95(), budget));
        }
    }
}
