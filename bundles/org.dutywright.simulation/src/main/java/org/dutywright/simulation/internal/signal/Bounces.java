// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Fault;

/** Adds pairs of transitions after an edge, as a contact does that closes. */
final class Bounces implements EdgeSource {

    /** Each distance is drawn evenly from 1 ± this of the stated spacing. */
    static final double SPACING_SPREAD = 0.3;

    private final EdgeSource source;
    private final ChannelModel channel;
    private final SignalTruth truth;
    private final RandomGenerator random;
    private final Deque<Fault.Bounce> waiting = new ArrayDeque<>();
    private final Deque<Edge> ready = new ArrayDeque<>();

    Bounces(EdgeSource source, ChannelModel channel, List<Fault> faults, long seed, SignalTruth truth) {
        this.source = source;
        this.channel = channel;
        this.truth = truth;
        this.random = Randomness.of(seed, channel.name(), "bounce", 0);
        faults.stream()
                .filter(Fault.Bounce.class::isInstance)
                .map(Fault.Bounce.class::cast)
                .sorted(Comparator.comparingDouble(Fault.Bounce::startSeconds))
                .forEach(waiting::add);
    }

    @Override
    public Edge next() {
        if (ready.isEmpty()) {
            Edge edge = source.next();
            ready.add(edge);
            if (isDue(edge)) {
                bounce(waiting.remove(), edge);
            }
        }
        // The mark behind the last edge comes again and again from the source itself.
        return ready.remove();
    }

    private boolean isDue(Edge edge) {
        return !waiting.isEmpty()
                && !edge.isNever()
                && edge.seconds() >= waiting.element().startSeconds()
                && (edge.high() == channel.activeHigh()) == waiting.element().afterActive();
    }

    private void bounce(Fault.Bounce fault, Edge edge) {
        Edge following = source.next();
        double seconds = edge.seconds();
        for (int i = 0; i < fault.pairs(); i++) {
            double back = seconds + spacing(fault);
            double forth = back + spacing(fault);
            if (forth >= following.seconds()) {
                break;
            }
            ready.add(Edge.whole(back, !edge.high()));
            ready.add(Edge.whole(forth, edge.high()));
            seconds = forth;
        }
        ready.add(following);
        if (seconds > edge.seconds()) {
            truth.happened(new Happening(fault, edge.seconds(), seconds, Optional.of("bounce")));
        }
    }

    private double spacing(Fault.Bounce fault) {
        return fault.spacingSeconds() * (1 + SPACING_SPREAD * (2 * random.nextDouble() - 1));
    }
}
