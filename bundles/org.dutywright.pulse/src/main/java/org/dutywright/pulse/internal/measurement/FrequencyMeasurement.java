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
 * Pulse repetition frequency in hertz: the number of cycles that count divided by their total time; smallest, largest
 * and standard deviation are those of 1 / period of single cycles. Its uncertainty is the relative one of the mean
 * period, from the outermost edges and the clock.
 */
@ServiceProvider(Measurement.class)
public final class FrequencyMeasurement implements Measurement {
    /** For the service loader. */
    public FrequencyMeasurement() {}

    @Override
    public String id() {
        return "frequency";
    }

    @Override
    public String title() {
        return "Frequency: cycles divided by their total time";
    }

    @Override
    public Run start(ChannelContext channel) {
        return new CycleStatistics(channel) {
            @Override
            double valueOf(Cycle cycle) {
                return cycle.frequencyHz();
            }

            @Override
            Result result() {
                double hertz = moments().count() / totalSeconds();
                Budget budget = new Budget(edges().meanPeriod()).times(hertz * hertz);
                return named(outcome(hertz, budget.and(List.of(clock(hertz)))));
            }

            @Override
            Result absent(String reason) {
                return named(new Outcome.Absent(reason));
            }
        };
    }

    private static Result named(Outcome outcome) {
        return new Result("frequency", "Frequency", "Hz", outcome);
    }
}
