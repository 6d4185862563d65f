// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Fault;

/** Lets active pulses reach only a share of the swing. */
final class Runts implements EdgeSource {

    private final EdgeSource source;
    private final ChannelModel channel;
    private final double endSeconds;
    private final SignalTruth truth;
    private final Deque<Fault.Runt> waiting = new ArrayDeque<>();
    private Optional<Fault.Runt> running = Optional.empty();
    private int pulsesLeft;
    private double startSeconds;

    Runts(EdgeSource source, ChannelModel channel, List<Fault> faults, double endSeconds, SignalTruth truth) {
        this.source = source;
        this.channel = channel;
        this.endSeconds = endSeconds;
        this.truth = truth;
        faults.stream()
                .filter(Fault.Runt.class::isInstance)
                .map(Fault.Runt.class::cast)
                .sorted(Comparator.comparingDouble(Fault.Runt::startSeconds))
                .forEach(waiting::add);
    }

    @Override
    public Edge next() {
        Edge edge = source.next();
        if (edge.isNever() || edge.high() != channel.activeHigh()) {
            endRunt(edge);
            return edge;
        }
        if (running.isEmpty()
                && !waiting.isEmpty()
                && edge.seconds() >= waiting.element().startSeconds()) {
            running = Optional.of(waiting.remove());
            pulsesLeft = running.get().pulses();
            startSeconds = edge.seconds();
        }
        return running.map(fault -> new Edge(edge.seconds(), edge.high(), fault.reachPercent() / 100))
                .orElse(edge);
    }

    private void endRunt(Edge edge) {
        if (running.isEmpty()) {
            return;
        }
        pulsesLeft--;
        if (pulsesLeft == 0 || edge.isNever()) {
            double end = Math.min(edge.seconds(), endSeconds);
            truth.happened(new Happening(running.get(), startSeconds, end, Optional.of("runt")));
            running = Optional.empty();
        }
    }
}
