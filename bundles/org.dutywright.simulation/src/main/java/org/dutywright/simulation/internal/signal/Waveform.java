// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.List;
import java.util.Optional;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.EdgeShape;
import org.dutywright.simulation.Fault;

/**
 * The voltage of a channel as a function of continuous time: from where it stood when the last transition began
 * towards that transition's target, along its shape. Sampling it filters nothing and rounds nothing.
 */
final class Waveform implements VoltageOverTime {

    private final ChannelModel channel;
    private final EdgeSource edges;
    private final Levels levels;
    private final ActiveSpans<Fault.SlowEdges> slowEdges;
    private Edge following;
    private boolean high;
    private double reach = 1;

    private double lastEventSeconds = Double.NEGATIVE_INFINITY;
    private double startSeconds = Double.NEGATIVE_INFINITY;
    private double fromVolts;
    private double targetVolts;
    private double swingVolts;
    private EdgeShape shape;
    private double settledSeconds = Double.NEGATIVE_INFINITY;

    Waveform(ChannelModel channel, EdgeSource edges, Levels levels, List<Fault> faults, double recordingStart) {
        this.channel = channel;
        this.edges = edges;
        this.levels = levels;
        this.slowEdges = ActiveSpans.of(Fault.SlowEdges.class, faults, recordingStart);
        this.high = !channel.activeHigh();
        this.targetVolts = levels.target(high, reach);
        this.fromVolts = targetVolts;
        this.swingVolts = levels.swing();
        this.shape = channel.edgeInto(high);
        this.following = edges.next();
    }

    @Override
    public double voltsAt(double seconds) {
        advanceTo(seconds);
        return valueAt(seconds);
    }

    @Override
    public void finish() {
        while (!following.isNever()) {
            following = edges.next();
        }
    }

    private double valueAt(double seconds) {
        return seconds >= settledSeconds
                ? targetVolts
                : shape.volts(fromVolts, targetVolts, swingVolts, seconds - startSeconds);
    }

    private void advanceTo(double seconds) {
        while (true) {
            // A long rise after a short fall could begin before it.
            double edgeStart = Math.max(
                    lastEventSeconds,
                    following.seconds() - channel.edgeInto(following.high()).leadSeconds());
            double change = levels.nextChangeSeconds();
            if (Math.min(edgeStart, change) > seconds) {
                return;
            }
            if (change <= edgeStart) {
                levels.change();
                head(change, levels.target(high, reach));
            } else {
                takeEdge(edgeStart);
            }
        }
    }

    private void takeEdge(double edgeStart) {
        Edge edge = following;
        high = edge.high();
        reach = edge.reach();
        head(edgeStart, levels.target(high, reach));
        following = edges.next();
    }

    /** Begins a transition to a target, unless the signal is on its way there already. */
    private void head(double seconds, double target) {
        lastEventSeconds = seconds;
        if (target == targetVolts) {
            return;
        }
        fromVolts = valueAt(seconds);
        startSeconds = seconds;
        targetVolts = target;
        swingVolts = levels.swing();
        boolean rises = target > fromVolts;
        EdgeShape healthy = channel.edgeInto(rises);
        Optional<Fault.SlowEdges> slow =
                slowEdges.at(seconds).stream().map(Span::what).findFirst();
        shape = slow.flatMap(rises ? Fault.SlowEdges::rise : Fault.SlowEdges::fall)
                .orElse(healthy);
        // A held voltage may lie further away than a whole swing.
        double swings = swingVolts > 0 ? Math.max(1, Math.abs(target - fromVolts) / swingVolts) : 1;
        settledSeconds = seconds + shape.settledSeconds() * swings;
    }
}
