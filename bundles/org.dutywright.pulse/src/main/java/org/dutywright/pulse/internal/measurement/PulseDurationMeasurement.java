// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Transition;

/**
 * Pulse duration in seconds: time spent in the active level, between the 50 % instants of its two transitions (IEEE Std
 * 181-2011), over the cycles that count. Of the mean's uncertainty only the part from noise shrinks with the number of
 * cycles; sampling, levels and clock do not.
 */
@ServiceProvider(Measurement.class)
public final class PulseDurationMeasurement implements Measurement {
    /** For the service loader. */
    public PulseDurationMeasurement() {}

    @Override
    public String id() {
        return "pulse-duration";
    }

    @Override
    public String title() {
        return "Pulse duration: time spent in the active level";
    }

    @Override
    public Run start(ChannelContext channel) {
        return new CycleStatistics(channel) {
            private final PulseWidth width = new PulseWidth(channel);

            @Override
            public void transition(Transition transition, boolean disturbed) {
                width.transition(transition, disturbed);
            }

            @Override
            double valueOf(Cycle cycle) {
                return cycle.pulseDurationSeconds();
            }

            @Override
            Result result() {
                double seconds = moments().mean();
                double noise = Math.sqrt(2.0 / moments().count()) * channel.edgeNoiseSeconds();
                double sampling = Math.sqrt(2) * channel.edgeSamplingSeconds();
                double clock = channel.timeBaseRelativeUncertainty() * seconds;
                double u = Math.hypot(Math.hypot(noise, sampling), Math.hypot(clock, width.uLevelSeconds()));
                return named(outcome(seconds, u));
            }

            @Override
            Result absent(String reason) {
                return named(new Outcome.Absent(reason));
            }
        };
    }

    private static Result named(Outcome outcome) {
        return new Result("pulse-duration", "Pulse duration", "s", outcome);
    }
}
