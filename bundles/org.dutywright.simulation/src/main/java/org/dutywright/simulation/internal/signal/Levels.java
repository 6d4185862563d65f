// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Fault;

/**
 * The voltages that a channel's two states stand for, and the faults that change them or take the output away from
 * the carrier. Constant between the instants of {@link #nextChangeSeconds()}.
 */
final class Levels {

    /** A change of levels: added volts, or a voltage that holds whatever the state; the highest rank wins. */
    private record Change(double lowVolts, double highVolts, Optional<Double> held, int rank) {
        static Change shift(double lowVolts, double highVolts) {
            return new Change(lowVolts, highVolts, Optional.empty(), 0);
        }

        static Change held(double volts, int rank) {
            return new Change(0, 0, Optional.of(volts), rank);
        }
    }

    private static final int UNPOWERED = 1;
    private static final int OPEN = 2;
    private static final int STUCK = 3;

    private final ChannelModel channel;
    private final ActiveSpans<Change> changes;
    private final double[] instants;
    private int nextInstant;
    private double low;
    private double high;
    private Optional<Double> held = Optional.empty();

    Levels(ChannelModel channel, List<Fault> faults, double recordingStart) {
        this.channel = channel;
        List<Span<Change>> spans = new ArrayList<>();
        for (Fault fault : faults) {
            changeOf(fault).ifPresent(change -> spans.add(spanOf(fault, recordingStart, change)));
        }
        this.changes = ActiveSpans.of(spans);
        this.instants = spans.stream()
                .mapMultiToDouble((span, instant) -> {
                    instant.accept(span.from());
                    instant.accept(span.to());
                })
                .filter(seconds -> seconds > Double.NEGATIVE_INFINITY)
                .sorted()
                .distinct()
                .toArray();
        apply(Double.NEGATIVE_INFINITY);
    }

    private Span<Change> spanOf(Fault fault, double recordingStart, Change change) {
        Span<Fault> span = Span.of(fault, recordingStart);
        double to = span.to();
        if (fault instanceof Fault.SupplyLoss loss) {
            // The first active edge begins before its 50 % instant; the output is the carrier's again from there.
            to = Math.max(
                    fault.endSeconds(),
                    loss.firstEdgeSeconds()
                            - channel.edgeInto(channel.activeHigh()).leadSeconds());
        }
        return new Span<>(span.from(), to, change);
    }

    private static Optional<Change> changeOf(Fault fault) {
        return switch (fault) {
            case Fault.GroundLift lift -> Optional.of(Change.shift(lift.volts(), lift.liftsHigh() ? lift.volts() : 0));
            case Fault.LevelShift shift -> Optional.of(Change.shift(shift.lowVolts(), shift.highVolts()));
            case Fault.SupplyLoss loss -> Optional.of(Change.held(loss.volts(), UNPOWERED));
            case Fault.SignalOpen open -> Optional.of(Change.held(open.volts(), OPEN));
            case Fault.Stuck stuck -> Optional.of(Change.held(stuck.volts(), STUCK));
            default -> Optional.empty();
        };
    }

    /** When the levels change next, infinite if never. */
    double nextChangeSeconds() {
        return nextInstant < instants.length ? instants[nextInstant] : Double.POSITIVE_INFINITY;
    }

    /** Makes the next change. */
    void change() {
        apply(instants[nextInstant++]);
    }

    private void apply(double seconds) {
        low = channel.lowVolts();
        high = channel.highVolts();
        List<Span<Change>> active = changes.at(seconds);
        for (Span<Change> span : active) {
            low += span.what().lowVolts();
            high += span.what().highVolts();
        }
        held = active.stream()
                .map(Span::what)
                .max(Comparator.comparingInt(Change::rank))
                .flatMap(Change::held);
    }

    /** Where the output goes for a state that is reached by a share of the swing. */
    double target(boolean isHigh, double reach) {
        if (held.isPresent()) {
            return held.get();
        }
        // A whole transition ends exactly at its level, which low + (high - low) does not always give.
        if (reach == 1) {
            return isHigh ? high : low;
        }
        return isHigh ? low + reach * (high - low) : high - reach * (high - low);
    }

    /** Distance of the two levels. */
    double swing() {
        return high - low;
    }
}
