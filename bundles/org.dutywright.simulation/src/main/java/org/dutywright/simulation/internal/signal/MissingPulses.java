// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Fault;

/** Takes active pulses away: both their transitions. The carrier behind runs on. */
final class MissingPulses implements EdgeSource {

    private final EdgeSource source;
    private final ChannelModel channel;
    private final double endSeconds;
    private final SignalTruth truth;
    private final Deque<Fault.MissingPulse> waiting = new ArrayDeque<>();

    MissingPulses(EdgeSource source, ChannelModel channel, List<Fault> faults, double endSeconds, SignalTruth truth) {
        this.source = source;
        this.channel = channel;
        this.endSeconds = endSeconds;
        this.truth = truth;
        faults.stream()
                .filter(Fault.MissingPulse.class::isInstance)
                .map(Fault.MissingPulse.class::cast)
                .sorted(Comparator.comparingDouble(Fault.MissingPulse::startSeconds))
                .forEach(waiting::add);
    }

    @Override
    public Edge next() {
        Edge edge = source.next();
        while (isDue(edge)) {
            edge = afterMissing(waiting.remove(), edge);
        }
        return edge;
    }

    private boolean isDue(Edge edge) {
        return !waiting.isEmpty()
                && !edge.isNever()
                && edge.high() == channel.activeHigh()
                && edge.seconds() >= waiting.element().startSeconds();
    }

    private Edge afterMissing(Fault.MissingPulse fault, Edge first) {
        Edge edge = first;
        for (int i = 0; i < fault.pulses() && !edge.isNever(); i++) {
            source.next();
            edge = source.next();
        }
        truth.happened(new Happening(
                fault,
                first.seconds(),
                Math.min(edge.seconds(), endSeconds),
                Happening.eventForAbsent(fault.pulses())));
        return edge;
    }
}
