// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Fault;

/** Adds spikes: for their width the signal goes to the other state, to a share of the swing. */
final class ExtraPulses implements EdgeSource {

    private final EdgeSource source;
    private final SignalTruth truth;
    private final Deque<Fault.ExtraPulse> waiting = new ArrayDeque<>();
    private Edge following;
    private boolean high;
    private Optional<Fault.ExtraPulse> spike = Optional.empty();

    ExtraPulses(EdgeSource source, ChannelModel channel, List<Fault> faults, SignalTruth truth) {
        this.source = source;
        this.truth = truth;
        this.high = !channel.activeHigh();
        this.following = source.next();
        faults.stream()
                .filter(Fault.ExtraPulse.class::isInstance)
                .map(Fault.ExtraPulse.class::cast)
                .sorted(Comparator.comparingDouble(Fault.ExtraPulse::startSeconds))
                .forEach(waiting::add);
    }

    @Override
    public Edge next() {
        double boundary = nextBoundary();
        if (boundary < following.seconds()) {
            return spike.isPresent() ? endSpike() : startSpike();
        }
        Edge edge = following;
        if (edge.isNever()) {
            return edge;
        }
        following = source.next();
        high = edge.high();
        // Under a spike the carrier's own transitions come out upside down.
        return spike.map(fault -> new Edge(edge.seconds(), !edge.high(), 1)).orElse(edge);
    }

    private double nextBoundary() {
        if (spike.isPresent()) {
            return spike.get().endSeconds();
        }
        return waiting.isEmpty() ? Double.POSITIVE_INFINITY : waiting.element().startSeconds();
    }

    private Edge startSpike() {
        Fault.ExtraPulse fault = waiting.remove();
        spike = Optional.of(fault);
        boolean whole = fault.reachPercent() >= 100;
        truth.happened(new Happening(
                fault, fault.startSeconds(), fault.endSeconds(), Optional.of(whole ? "extra-pulse" : "runt")));
        return new Edge(fault.startSeconds(), !high, fault.reachPercent() / 100);
    }

    private Edge endSpike() {
        double seconds = spike.orElseThrow().endSeconds();
        spike = Optional.empty();
        return Edge.whole(seconds, high);
    }
}
