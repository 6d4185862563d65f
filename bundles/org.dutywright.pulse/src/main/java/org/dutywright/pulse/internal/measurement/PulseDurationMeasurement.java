// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;

/**
 * Pulse duration in seconds: time spent in the active level, between the 50 % instants of its two transitions (IEEE Std
 * 181-2011), over the cycles that count. The budget of the mean is that of {@link EdgeBudget} and the clock.
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
            @Override
            double valueOf(Cycle cycle) {
                return cycle.pulseDurationSeconds();
            }

            @Override
            Result result() {
                return named(meanBetweenEdges());
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
