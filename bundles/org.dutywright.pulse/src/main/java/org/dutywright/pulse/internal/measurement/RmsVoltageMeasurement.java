// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleShape;
import org.dutywright.pulse.InstrumentErrors;
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
        return new CycleStatistics(channel) {
            private double volts;
            private double squares;

            @Override
            public void cycle(Cycle cycle, CycleShape shape) {
                super.cycle(cycle);
                if (!cycle.disturbed()) {
                    volts += cycle.mean() * cycle.periodSeconds();
                    squares += shape.meanSquare() * cycle.periodSeconds();
                }
            }

            @Override
            double valueOf(Cycle cycle) {
                return cycle.periodSeconds();
            }

            @Override
            Result result() {
                double rms = Math.sqrt(squares / totalSeconds());
                Budget budget = rms > 0 ? budget(rms, volts / totalSeconds()) : Budget.NONE;
                return named(new Outcome.Single(budget.around(rms)), channel);
            }

            private Budget budget(double rms, double mean) {
                StateLevels levels = channel.levels();
                double low = levels.low().value();
                double high = levels.high().value();
                double highShare = Math.clamp((mean - low) / levels.swing(), 0, 1);
                double noise = Math.max(levels.lowNoise(), levels.highNoise());
                double swingOfSquares = Math.abs(high * high - low * low) / (2 * rms);
                InstrumentErrors recorder = InstrumentErrors.of(channel.settings(), channel.unit());
                double missing = edges().meanMissingSquare(channel.stepSeconds())
                        / moments().mean()
                        / (2 * rms);
                // noise only ever adds and straight lines only ever take away: both at full size
                return Budget.of(
                                Component.normal("noise that adds", noise * noise / (3 * rms)),
                                Component.normal("edges between the samples", missing),
                                Component.normal(
                                        "high level",
                                        highShare
                                                * Math.abs(high)
                                                / rms
                                                * levels.high().u()),
                                Component.normal(
                                        "low level",
                                        (1 - highShare)
                                                * Math.abs(low)
                                                / rms
                                                * levels.low().u()),
                                Component.rectangular("gain of the recorder", recorder.gainShare() * rms),
                                Component.rectangular(
                                        "offset of the recorder", recorder.offsetVolts() * Math.abs(mean) / rms))
                        .and(new Budget(edges().meanArea(channel.stepSeconds()))
                                .times(swingOfSquares / moments().mean())
                                .components());
            }

            @Override
            Result absent(String reason) {
                return named(new Outcome.Absent(reason), channel);
            }
        };
    }

    private static Result named(Outcome outcome, ChannelContext channel) {
        return new Result("rms-voltage", "RMS over whole cycles", channel.unit(), outcome);
    }
}
