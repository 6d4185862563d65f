// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.util.List;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.EdgeUncertainty;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Uncertain;

/**
 * Jitter of the undisturbed cycles in seconds: standard deviation and range of the period, standard deviation and largest
 * size of the change from one cycle to the next, and lag-1 autocorrelation of the period, which is -0.5 where the edges scatter
 * independently around a steady clock and near 0 where the period itself scatters. Nothing is subtracted for the noise and
 * the samples of the recording: what they add stands in the budget, at its full size because it has one sign. An empty result
 * says that too few cycles were recorded.
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
        /** Instants of very noisy edges have a few stray values more than normal ones: found by the study of coverage. */
        private static final double TAILS = 1.25;

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
            return List.of(
                    new Result("period-jitter.rms", "Period jitter, RMS", "s", spread(periods, 2, Math.sqrt(3))),
                    new Result(
                            "period-jitter.peak-to-peak",
                            "Period jitter, peak to peak",
                            "s",
                            periods.count() < 2 ? tooFew() : new Outcome.Single(range())),
                    new Result(
                            "cycle-jitter.rms", "Cycle to cycle jitter, RMS", "s", spread(changes, 6, Math.sqrt(12))),
                    new Result("cycle-jitter.most", "Cycle to cycle jitter, most", "s", mostChange()),
                    new Result("period-jitter.lag-1", "Period autocorrelation, lag 1", "", correlation()));
        }

        /**
         * A standard deviation.
         *
         * @param edgeVariances how many variances of an edge it holds where edges scatter independently
         * @param patternFactor what it may become where edges faster than the samples wander: periods of a whole number of
         *     samples or one more, half of them each, have half a step; changes from one to the other and back a whole one
         */
        private Outcome spread(Moments moments, double edgeVariances, double patternFactor) {
            if (moments.count() < 2) {
                return tooFew();
            }
            double sd = moments.sd();
            EdgeUncertainty edge = channel.starting();
            double degrees = moments.count() - 1.0;
            double uShare = ofDeviation(moments, degrees);
            double noise = TAILS * Math.sqrt(edgeVariances) * edge.noiseSeconds();
            double places = patternFactor * edge.withoutNoiseSeconds();
            return new Outcome.Single(Budget.of(
                            Component.typeA("number of cycles", sd * uShare, degrees),
                            Component.normal("noise at the edges", added(sd, noise, uShare)),
                            Component.normal("sampling of the edges", Math.max(added(sd, places, uShare), places - sd)))
                    .around(sd));
        }

        // JCGM 100, annex E.4.3: 1 / sqrt(2 degrees) for independent values; squares of neighbours with correlation r
        // have the correlation r^2, which raises the variance of their mean by 1 + 2 r^2
        private static double ofDeviation(Moments moments, double degrees) {
            double r = moments.pairs() > 2 && moments.sd() > 0 ? Math.clamp(moments.autocorrelation(), -1, 1) : 0;
            return Math.sqrt((1 + 2 * r * r) / (2 * degrees));
        }

        // What a scatter of the recording has added to a measured deviation, which is the root of a sum of squares; the
        // scatter may have come out larger by two of its own deviations.
        private static double added(double measured, double scatter, double uShare) {
            double most = scatter * (1 + 2 * uShare);
            return measured - Math.sqrt(Math.max(0, measured * measured - most * most));
        }

        // The largest and the smallest of n normal values lie about sqrt(2 ln n) deviations from their mean.
        private Uncertain range() {
            double range = periods.max() - periods.min();
            EdgeUncertainty edge = channel.starting();
            double most = Math.sqrt(2 * Math.log((double) periods.count()));
            double noise = TAILS * 2 * most * Math.sqrt(2) * edge.noiseSeconds();
            // two periods, each between two edges that may be off by half a step to either side
            double places = 2 * Math.sqrt(12) * edge.withoutNoiseSeconds();
            return Budget.of(
                            Component.normal("noise that widens", added(range, noise, 0)),
                            Component.normal("noise at four edges", 2 * edge.noiseSeconds()),
                            Component.rectangular("sampling of the edges", places))
                    .around(range);
        }

        // A change lies between three edges, the one in the middle counts twice: a variance of six. The largest size of
        // n
        // normal values lies about sqrt(2 ln 2 n) deviations from 0.
        private Outcome mostChange() {
            if (changes.count() < 1) {
                return new Outcome.Absent("it takes two whole, undisturbed cycles in a row");
            }
            double most = Math.max(Math.abs(changes.min()), Math.abs(changes.max()));
            EdgeUncertainty edge = channel.starting();
            double noise = Math.sqrt(6) * edge.noiseSeconds();
            double widening = Math.sqrt(2 * Math.log(2.0 * changes.count())) * noise;
            return new Outcome.Single(Budget.of(
                            Component.normal("noise that widens", added(most, widening, 0)),
                            Component.normal("noise at three edges", noise),
                            Component.rectangular(
                                    "sampling of the edges", 2 * Math.sqrt(12) * edge.withoutNoiseSeconds()))
                    .around(most));
        }

        private Outcome correlation() {
            if (periods.pairs() < 2 || !(periods.sd() > 0)) {
                return new Outcome.Absent("it takes three cycles in a row with different periods");
            }
            return new Outcome.Single(Budget.of(Component.typeA(
                            "number of cycles", 1 / Math.sqrt((double) periods.pairs()), Double.POSITIVE_INFINITY))
                    .around(periods.autocorrelation()));
        }

        private static Outcome tooFew() {
            return new Outcome.Absent("it takes two whole, undisturbed cycles");
        }
    }
}
