// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.util.List;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Coverage;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;

/**
 * Jitter of the undisturbed cycles in seconds: standard deviation and range of the period, standard deviation of the
 * change from one cycle to the next, and lag-1 autocorrelation of the period, which is -0.5 where the edges scatter
 * independently around a steady clock and near 0 where the period itself scatters. Nothing is subtracted for the noise
 * of the recording; an empty result says that too few cycles were recorded.
 */
@ServiceProvider(Measurement.class)
public final class PeriodJitterMeasurement implements Measurement {
    /** For the service loader. */
    public PeriodJitterMeasurement() {}

    @Override
    public String id() {
        return "period-jitter";
    }

    @Override
    public String title() {
        return "Period jitter";
    }

    @Override
    public Run start(ChannelContext channel) {
        return new Jitter(channel);
    }

    private static final class Jitter implements Run {
        private final ChannelContext channel;
        private final Moments periods = new Moments();
        private final Moments changes = new Moments();
        private double lastSeconds = Double.NaN;
        private double lastEndSeconds = Double.NaN;

        Jitter(ChannelContext channel) {
            this.channel = channel;
        }

        @Override
        public void cycle(Cycle cycle) {
            if (cycle.disturbed()) {
                return;
            }
            if (cycle.startSeconds() - lastEndSeconds < cycle.periodSeconds() / 1000) {
                changes.add(cycle.periodSeconds() - lastSeconds);
            } else {
                periods.interrupt();
            }
            periods.add(cycle.periodSeconds());
            lastSeconds = cycle.periodSeconds();
            lastEndSeconds = cycle.endSeconds();
        }

        @Override
        public List<Result> finish() {
            double uPeriod = Math.sqrt(2) * channel.edgeUncertaintySeconds();
            return List.of(
                    new Result("period-jitter.rms", "Period jitter, RMS", "s", spread(periods)),
                    new Result(
                            "period-jitter.peak-to-peak",
                            "Period jitter, peak to peak",
                            "s",
                            periods.count() < 2
                                    ? tooFew()
                                    : new Outcome.Single(
                                            Coverage.known(periods.max() - periods.min(), Math.sqrt(2) * uPeriod))),
                    new Result("cycle-jitter.rms", "Cycle to cycle jitter, RMS", "s", spread(changes)),
                    new Result("period-jitter.lag-1", "Period autocorrelation, lag 1", "", correlation()));
        }

        private static Outcome spread(Moments moments) {
            if (moments.count() < 2) {
                return tooFew();
            }
            // relative standard uncertainty of a standard deviation of normal scatter, JCGM 100 annex E.4.3
            double degrees = moments.count() - 1.0;
            double u = moments.sd() / Math.sqrt(2 * degrees);
            return new Outcome.Single(Coverage.combine(moments.sd(), u, degrees, 0));
        }

        private Outcome correlation() {
            if (periods.pairs() < 2 || !(periods.sd() > 0)) {
                return new Outcome.Absent("it takes three cycles in a row with different periods");
            }
            return new Outcome.Single(
                    Coverage.known(periods.autocorrelation(), 1 / Math.sqrt((double) periods.pairs())));
        }

        private static Outcome tooFew() {
            return new Outcome.Absent("it takes two whole, undisturbed cycles");
        }
    }
}
