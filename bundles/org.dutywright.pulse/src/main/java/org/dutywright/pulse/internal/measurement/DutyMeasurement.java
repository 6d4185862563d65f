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
 * Duty cycle in percent (the standard's duty factor): pulse duration over period, over the cycles that count.
 *
 * <p>With three independent edges of uncertainty u_e, one cycle has u(D) = u_e / T sqrt(1 + (1 - D)^2 + D^2). Of the
 * mean's uncertainty the part from noise shrinks with the number of cycles; sampling and levels do not. The clock
 * cancels.
 */
@ServiceProvider(Measurement.class)
public final class DutyMeasurement implements Measurement {
    /** For the service loader. */
    public DutyMeasurement() {}

    @Override
    public String id() {
        return "duty";
    }

    @Override
    public String title() {
        return "Duty cycle: share of the period spent in the active level";
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
                return cycle.dutyPercent();
            }

            @Override
            Result result() {
                double percent = moments().mean();
                double period = totalSeconds() / moments().count();
                double factor = dutyFactor(percent / 100) / period;
                double noise = factor
                        * channel.edgeNoiseSeconds()
                        / Math.sqrt((double) moments().count());
                double sampling = factor * channel.edgeSamplingSeconds();
                double level = width.uLevelSeconds() / period;
                return named(outcome(percent, 100 * Math.hypot(noise, Math.hypot(sampling, level))));
            }

            @Override
            Result absent(String reason) {
                return named(new Outcome.Absent(reason));
            }
        };
    }

    /** sqrt(1 + (1 - D)^2 + D^2) for a duty from 0 to 1: how three edges of equal uncertainty act on the duty. */
    static double dutyFactor(double duty) {
        return Math.sqrt(1 + (1 - duty) * (1 - duty) + duty * duty);
    }

    private static Result named(Outcome outcome) {
        return new Result("duty", "Duty cycle", "%", outcome);
    }
}
