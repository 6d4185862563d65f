// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.internal.suspects.Interruption.State;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Status;

/** Looks closely at the interruptions of a channel: state, carrier phase, and whether another channel shares them. */
final class InterruptionFinder {
    /** Enough to tell a pattern; keeps the work bounded on a recording full of them. */
    static final int MOST = 200;

    private static final Set<EventKind> INTERRUPTIONS = EnumSet.of(EventKind.DROPOUT, EventKind.MISSING_PULSE);
    private static final Set<EventKind> SHARED =
            EnumSet.of(EventKind.DROPOUT, EventKind.MISSING_PULSE, EventKind.STUCK_HIGH, EventKind.STUCK_LOW);

    private InterruptionFinder() {}

    static List<Interruption> of(
            Capture capture, ChannelMeasurement channel, List<ChannelMeasurement> others, Progress progress)
            throws IOException {
        List<Interruption> found = new ArrayList<>();
        if (channel.status() != Status.OK
                || channel.levels().isEmpty()
                || channel.medianPeriodSeconds().isEmpty()) {
            return found;
        }
        SampleProbe probe = SampleProbe.of(capture, channel.channel().name());
        double period = channel.medianPeriodSeconds().get();
        for (PulseEvent event : channel.events()) {
            if (!INTERRUPTIONS.contains(event.kind()) || found.size() == MOST) {
                continue;
            }
            progress.checkCancelled();
            Span span = new Span(event.startSeconds(), event.endSeconds());
            Optional<CarrierPhase> phase = CarrierPhase.across(channel.cycles(), period, span);
            State state = state(probe, channel.levels().get(), span);
            found.add(new Interruption(event.kind(), span, state, phase, together(event, period, others)));
        }
        return found;
    }

    /** Whether an event of the other channels begins within one cycle: the last edge before may be that far back. */
    private static boolean together(PulseEvent event, double period, List<ChannelMeasurement> others) {
        for (ChannelMeasurement other : others) {
            double within = Math.max(period, other.medianPeriodSeconds().orElse(period));
            boolean shared = other.events().stream()
                    .anyMatch(it -> SHARED.contains(it.kind())
                            && it.startSeconds() <= event.startSeconds() + within
                            && it.startSeconds() >= event.startSeconds() - within);
            if (shared) {
                return true;
            }
        }
        return false;
    }

    private static State state(SampleProbe probe, StateLevels levels, Span span) throws IOException {
        OptionalDouble mean = probe.middleMean(span);
        if (mean.isEmpty()) {
            return State.BETWEEN;
        }
        double share = (mean.getAsDouble() - levels.low().value()) / levels.swing();
        if (share > 0.85) {
            return State.HIGH;
        }
        return share < 0.15 ? State.LOW : State.BETWEEN;
    }
}
