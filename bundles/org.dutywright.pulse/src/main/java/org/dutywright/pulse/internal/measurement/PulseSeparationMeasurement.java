// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;

/**
 * Pulse separation in seconds: from the 50 % instant at which a pulse ends to that at which the next one starts (IEEE Std
 * 181-2011), period less pulse duration, over the cycles that count. Its edges err as those of the pulse duration do, see
 * {@link EdgeBudget}.
 */
@ServiceProvider(Measurement.class)
public final class PulseSeparationMeasurement implements Measurement {
    /** For the service loader. */
    public PulseSeparationMeasurement() {}

    @Override
    public String id() {
        return "pulse-separation";
    }

    @Override
    public String title() {
        return "Pulse separation: time between two pulses";
    }

    @Override
    public Run start(ChannelContext channel) {
        return new CycleStatistics(channel) {
            @Override
            double valueOf(Cycle cycle) {
                return cycle.periodSeconds() - cycle.pulseDurationSeconds();
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
        return new Result("pulse-separation", "Pulse separation", "s", outcome);
    }
}
