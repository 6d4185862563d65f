// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.util.List;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;

/**
 * Pulse period in seconds, from one edge into the active level to the next at the 50 % level (IEEE Std 181-2011), over
 * the cycles that count. The mean's uncertainty comes from the outermost edges and the clock.
 */
@ServiceProvider(Measurement.class)
public final class PeriodMeasurement implements Measurement {
    /** For the service loader. */
    public PeriodMeasurement() {}

    @Override
    public String id() {
        return "period";
    }

    @Override
    public String title() {
        return "Pulse period";
    }

    @Override
    public Run start(ChannelContext channel) {
        return new CycleStatistics(channel) {
            @Override
            double valueOf(Cycle cycle) {
                return cycle.periodSeconds();
            }

            @Override
            Result result() {
                double seconds = moments().mean();
                return named(outcome(seconds, new Budget(edges().meanPeriod()).and(List.of(clock(seconds)))));
            }

            @Override
            Result absent(String reason) {
                return named(new Outcome.Absent(reason));
            }
        };
    }

    private static Result named(Outcome outcome) {
        return new Result("period", "Period", "s", outcome);
    }
}
