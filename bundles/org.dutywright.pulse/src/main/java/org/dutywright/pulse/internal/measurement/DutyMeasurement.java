// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;

/**
 * Duty cycle in percent (the standard's duty factor): pulse duration over period, over the cycles that count.
 *
 * <p>The budget of the mean is that of {@link EdgeBudget}: a single cycle of three independent edges of uncertainty u_e has
 * u(D) = u_e / T sqrt(1 + (1 - D)^2 + D^2), many in a row share theirs. The clock cancels.
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
            @Override
            double valueOf(Cycle cycle) {
                return cycle.dutyPercent();
            }

            @Override
            Result result() {
                double percent = moments().mean();
                double period = totalSeconds() / moments().count();
                return named(outcome(percent, new Budget(edges().meanDuty(percent / 100)).times(100 / period)));
            }

            @Override
            Result absent(String reason) {
                return named(new Outcome.Absent(reason));
            }
        };
    }

    private static Result named(Outcome outcome) {
        return new Result("duty", "Duty cycle", "%", outcome);
    }
}
