// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import java.util.List;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Coverage;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Uncertain;

/** A measurement of one quantity over the whole, undisturbed cycles of a channel. */
abstract class CycleStatistics implements Measurement.Run {
    /** Why there is no number where no cycle counts. */
    static final String NO_CYCLE = "no whole, undisturbed cycle was recorded";

    private final ChannelContext channel;
    private final Moments moments = new Moments();
    private double totalSeconds;
    private double lastEndSeconds = Double.NaN;
    private long stretches;

    CycleStatistics(ChannelContext channel) {
        this.channel = channel;
    }

    /** The quantity of one cycle. */
    abstract double valueOf(Cycle cycle);

    /** The result made of the statistics; called only if there was a cycle. */
    abstract Result result();

    /** The result without a cycle. */
    abstract Result absent(String reason);

    @Override
    public void cycle(Cycle cycle) {
        if (cycle.disturbed()) {
            return;
        }
        boolean follows = cycle.startSeconds() - lastEndSeconds < cycle.periodSeconds() / 1000;
        if (!follows) {
            stretches++;
        }
        lastEndSeconds = cycle.endSeconds();
        totalSeconds += cycle.periodSeconds();
        moments.add(valueOf(cycle));
    }

    @Override
    public List<Result> finish() {
        return List.of(moments.count() == 0 ? absent(NO_CYCLE) : result());
    }

    ChannelContext channel() {
        return channel;
    }

    Moments moments() {
        return moments;
    }

    /** Time of all cycles that count. */
    double totalSeconds() {
        return totalSeconds;
    }

    /**
     * Standard uncertainty of the mean period without that of the clock. The instants of edges inside a stretch of
     * cycles cancel: only those at its two ends matter.
     */
    double uMeanPeriodSeconds() {
        return Math.sqrt(2.0 * stretches) * channel.edgeUncertaintySeconds() / moments.count();
    }

    /** A statistic with a given mean. */
    Outcome outcome(double mean, double u) {
        Uncertain known = Coverage.known(mean, u);
        return new Outcome.OfCycles(
                new Statistic(mean, moments.min(), moments.max(), moments.sd(), known.u(), known.u95()));
    }
}
