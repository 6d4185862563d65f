// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Budget.Shape;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.InstrumentErrors;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.StateLevels;

/**
 * Average of the signal over the whole cycles that count, in the channel's unit: what an averaging meter settles on. It is
 * the integral of the samples, joined by straight lines, over the total time.
 *
 * <p>Its budget: noise over the root of the number of independent samples; what noise leaves of the code step, in each state
 * for its time; edges, whose place between two samples is not seen by straight lines; and gain and offset of the recorder
 * where they are stated.
 */
@ServiceProvider(Measurement.class)
public final class MeanVoltageMeasurement implements Measurement {
    /** For the service loader. */
    public MeanVoltageMeasurement() {}

    @Override
    public String id() {
        return "mean-voltage";
    }

    @Override
    public String title() {
        return "Mean over whole cycles, as an averaging meter reads it";
    }

    @Override
    public Run start(ChannelContext channel) {
        return new CycleStatistics(channel) {
            private double integral;

            @Override
            public void cycle(Cycle cycle) {
                super.cycle(cycle);
                if (!cycle.disturbed()) {
                    integral += cycle.mean() * cycle.periodSeconds();
                }
            }

            @Override
            double valueOf(Cycle cycle) {
                return cycle.mean();
            }

            @Override
            Result result() {
                double volts = integral / totalSeconds();
                double duty = highShare(volts);
                return named(new Outcome.Single(budget(volts, duty).around(volts)), channel);
            }

            // Where noise and levels of the states differ, the time spent in each counts.
            private double highShare(double volts) {
                StateLevels levels = channel.levels();
                return Math.clamp((volts - levels.low().value()) / levels.swing(), 0, 1);
            }

            private Budget budget(double volts, double highShare) {
                StateLevels levels = channel.levels();
                double period = totalSeconds() / moments().count();
                double variance =
                        highShare * Math.pow(levels.highNoise(), 2) + (1 - highShare) * Math.pow(levels.lowNoise(), 2);
                double samples = Math.max(1, totalSeconds() / channel.stepSeconds() / channel.samplesPerIndependent());
                Budget code = Budget.of(
                        Component.bounded(
                                "code step in the high state", Shape.RECTANGULAR, highShare * channel.codeKept()),
                        Component.bounded(
                                "code step in the low state", Shape.RECTANGULAR, (1 - highShare) * channel.codeKept()));
                return Budget.of(Component.typeA("noise", Math.sqrt(variance / samples), Double.POSITIVE_INFINITY))
                        .and(code.components())
                        .and(new Budget(edges().meanArea(channel.stepSeconds()))
                                .times(levels.swing() / period)
                                .components())
                        .and(InstrumentErrors.of(channel.settings(), channel.unit())
                                .components(volts));
            }

            @Override
            Result absent(String reason) {
                return named(new Outcome.Absent(reason), channel);
            }
        };
    }

    private static Result named(Outcome outcome, ChannelContext channel) {
        return new Result("mean-voltage", "Mean over whole cycles", channel.unit(), outcome);
    }
}
