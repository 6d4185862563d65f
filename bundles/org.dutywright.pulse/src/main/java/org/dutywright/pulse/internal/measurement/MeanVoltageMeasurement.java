// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Coverage;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.StateLevels;

/**
 * Average of the signal over the whole cycles that count, in the channel's unit: what an averaging meter settles on. It is
 * the integral of the samples, joined by straight lines, over the total time.
 *
 * <p>Its uncertainty: noise over the root of the number of samples; one code step over sqrt(12), the same for all
 * samples; and edges faster than the samples, which may be off by the same part of a step in every cycle. An error of
 * the recorder's own gain or offset is not in it.
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
                StateLevels levels = channel.levels();
                double samples = Math.max(1, totalSeconds() / channel.stepSeconds());
                double noise = Math.max(levels.lowNoise(), levels.highNoise()) / Math.sqrt(samples);
                double period = totalSeconds() / moments().count();
                double edges = Math.sqrt(2) * channel.edgeSamplingSeconds() / period * levels.swing();
                double u = Math.hypot(noise, Math.hypot(channel.codeStep() / Math.sqrt(12), edges));
                return named(new Outcome.Single(Coverage.known(integral / totalSeconds(), u)), channel);
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
