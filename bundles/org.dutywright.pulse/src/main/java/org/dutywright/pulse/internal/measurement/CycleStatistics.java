// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import java.util.List;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Budget.Shape;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Statistic;

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

    /** How errors of the edges act on means over these cycles. */
    EdgeBudget edges() {
        return new EdgeBudget(channel, moments.count(), Math.max(1, stretches));
    }

    /** The part of the recording's clock in a time or frequency. */
    Component clock(double value) {
        return Component.bounded(
                "the recorder's clock", Shape.RECTANGULAR, channel.timeBaseRelativeUncertainty() * value);
    }

    /** A statistic with a given mean and its budget. */
    Outcome outcome(double mean, Budget budget) {
        return new Outcome.OfCycles(
                new Statistic(mean, moments.min(), moments.max(), moments.sd(), budget.u(), budget.u95(), budget));
    }

    /** The outcome of a time between two edges of one cycle, as the pulse and the separation are: their errors and the clock's. */
    Outcome meanBetweenEdges() {
        double seconds = moments.mean();
        return outcome(seconds, new Budget(edges().meanPulse()).and(List.of(clock(seconds))));
    }
}
