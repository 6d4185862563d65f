// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.util.List;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Coverage;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleShape;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.StateLevels;

/**
 * Root mean square of the signal over the whole cycles that count, in the channel's unit: the integral of the squared signal,
 * the samples joined by straight lines, over the total time. A trapezoid from 0 to V with a duty D and linear edges of length
 * r in a period T has V sqrt(D - r / (3 T)).
 *
 * <p>Nothing is subtracted for noise, which adds up to two thirds of its square to the mean square; whether it belongs to the
 * signal or to the recorder is not known, so all of it is taken as the bound of an error. An error of the high share of the
 * time moves the mean square by the difference of the squared levels, one of a level by its share of the time.
 */
@ServiceProvider(Measurement.class)
public final class RmsVoltageMeasurement implements Measurement {
    /** For the service loader. */
    public RmsVoltageMeasurement() {}

    @Override
    public String id() {
        return "rms-voltage";
    }

    @Override
    public String title() {
        return "Root mean square over whole cycles";
    }

    @Override
    public Run start(ChannelContext channel) {
        return new Rms(channel);
    }

    private static final class Rms implements Run {
        private final ChannelContext channel;
        private long cycles;
        private double seconds;
        private double volts;
        private double squares;

        Rms(ChannelContext channel) {
            this.channel = channel;
        }

        @Override
        public void cycle(Cycle cycle) {}

        @Override
        public void cycle(Cycle cycle, CycleShape shape) {
            if (!cycle.disturbed()) {
                cycles++;
                seconds += cycle.periodSeconds();
                volts += cycle.mean() * cycle.periodSeconds();
                squares += shape.meanSquare() * cycle.periodSeconds();
            }
        }

        @Override
        public List<Result> finish() {
            Outcome outcome = cycles == 0
                    ? new Outcome.Absent(CycleStatistics.NO_CYCLE)
                    : new Outcome.Single(Coverage.known(Math.sqrt(squares / seconds), u()));
            return List.of(new Result("rms-voltage", "RMS over whole cycles", channel.unit(), outcome));
        }

        private double u() {
            double rms = Math.sqrt(squares / seconds);
            if (!(rms > 0)) {
                return 0;
            }
            StateLevels levels = channel.levels();
            double low = levels.low().value();
            double high = levels.high().value();
            double highShare = Math.clamp((volts / seconds - low) / levels.swing(), 0, 1);
            double noise = Math.max(levels.lowNoise(), levels.highNoise());
            double fromNoise = noise * noise / (3 * rms) / Math.sqrt(3);
            double fromLevels = Math.hypot(
                    highShare * high * levels.high().u(),
                    (1 - highShare) * low * levels.low().u());
            double edges = Math.sqrt(2) * channel.edgeSamplingSeconds() * cycles / seconds;
            double fromEdges = edges * Math.abs(high * high - low * low) / 2;
            return Math.hypot(fromNoise, Math.hypot(fromLevels, fromEdges) / rms);
        }
    }
}
