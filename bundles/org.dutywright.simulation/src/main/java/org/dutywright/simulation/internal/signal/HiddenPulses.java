// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Fault;

/** Passes every transition on and counts the pulses that an open path or a stuck level hides. */
final class HiddenPulses implements EdgeSource {

    /** A level is stuck if it lasts that many periods and to the end of the recording. */
    private static final double STUCK_PERIODS = 4;

    private static final class Hider {
        private final Fault fault;
        private long pulses;

        Hider(Fault fault) {
            this.fault = fault;
        }
    }

    private final EdgeSource source;
    private final ChannelModel channel;
    private final double endSeconds;
    private final SignalTruth truth;
    private final List<Hider> waiting = new ArrayList<>();

    HiddenPulses(EdgeSource source, ChannelModel channel, List<Fault> faults, double endSeconds, SignalTruth truth) {
        this.source = source;
        this.channel = channel;
        this.endSeconds = endSeconds;
        this.truth = truth;
        faults.stream()
                .filter(fault -> fault instanceof Fault.SignalOpen || fault instanceof Fault.Stuck)
                .sorted(Comparator.comparingDouble(Fault::startSeconds))
                .forEach(fault -> waiting.add(new Hider(fault)));
    }

    @Override
    public Edge next() {
        Edge edge = source.next();
        if (waiting.isEmpty() || waiting.get(0).fault.startSeconds() > edge.seconds()) {
            return edge;
        }
        waiting.removeIf(hider -> isOver(hider, edge));
        if (edge.high() == channel.activeHigh()) {
            for (Hider hider : waiting) {
                if (hider.fault.startSeconds() > edge.seconds()) {
                    break;
                }
                hider.pulses++;
            }
        }
        return edge;
    }

    private boolean isOver(Hider hider, Edge edge) {
        boolean over = edge.isNever() || hider.fault.endSeconds() <= edge.seconds();
        if (over) {
            Fault fault = hider.fault;
            truth.happened(new Happening(fault, fault.startSeconds(), fault.endSeconds(), event(hider)));
        }
        return over;
    }

    private Optional<String> event(Hider hider) {
        Fault fault = hider.fault;
        boolean toTheEnd = fault.endSeconds() >= endSeconds;
        boolean longEnough = fault.endSeconds() - fault.startSeconds() >= STUCK_PERIODS * channel.periodSeconds();
        if (!toTheEnd || !longEnough) {
            return Happening.eventForAbsent(hider.pulses);
        }
        return Optional.of(endsHigh(fault) ? "stuck-high" : "stuck-low");
    }

    private boolean endsHigh(Fault fault) {
        double middle = (channel.lowVolts() + channel.highVolts()) / 2;
        return switch (fault) {
            case Fault.Stuck stuck -> stuck.volts() > middle;
            case Fault.SignalOpen open -> open.volts() > middle;
            default -> throw new IllegalStateException("hides no pulse: " + fault);
        };
    }
}
