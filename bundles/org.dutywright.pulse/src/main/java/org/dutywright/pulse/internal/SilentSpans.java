// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.dutywright.pulse.EventKind;

/**
 * Looks through the pulses for what concerns single ones: slow edges, and states that last until the recording ends.
 * A state that lasts until the end of the capture is stuck; one that lasts until a gap in the recording, or through all
 * of a stretch between two gaps, is a dropout as far as it was recorded.
 */
final class SilentSpans {
    private final EventLimits limits;
    private final EventList events;
    private final List<double[]> spans = new ArrayList<>();
    private int next;

    SilentSpans(EventLimits limits, EventList events) {
        this.limits = limits;
        this.events = events;
    }

    /** Finds them all; an edge at which a level shifts is part of the shift. */
    void find(PulseStages stages) throws IOException {
        ShiftEnds shifts = new ShiftEnds(stages.lowShifts(), stages.highShifts(), limits.periodSeconds());
        SpillLog.Reader<Pulse> reader = stages.pulses().reader(1);
        boolean first = true;
        for (Pulse pulse = reader.next(); pulse != null; pulse = reader.next()) {
            if (pulse.startsWithEdge && !pulse.bounced && limits.slow(pulse) && !shifts.near(pulse.startSeconds)) {
                slowEdge(pulse);
            }
            if (!pulse.endsWithEdge) {
                silence(pulse, reader.atEnd(), first);
                first = false;
            }
        }
    }

    private void slowEdge(Pulse pulse) {
        double seconds = pulse.edgeSeconds;
        events.add(
                EventKind.SLOW_EDGE,
                pulse.startSeconds - seconds / 2,
                pulse.startSeconds + seconds / 2,
                () -> Words.of(
                        "the %s transition took %s from 10 %% to 90 %%, the limit is %s",
                        pulse.high ? "rising" : "falling",
                        Words.seconds(seconds),
                        Words.seconds(limits.slowEdgeSeconds())));
    }

    private void silence(Pulse pulse, boolean last, boolean firstSegment) {
        boolean silentFromTheStart = firstSegment && !pulse.startsWithEdge;
        if (!(pulse.seconds() >= limits.stuckSeconds()) || (silentFromTheStart && !last)) {
            return;
        }
        EventKind kind = last ? pulse.high ? EventKind.STUCK_HIGH : EventKind.STUCK_LOW : EventKind.DROPOUT;
        spans.add(new double[] {pulse.startSeconds, pulse.endSeconds});
        events.add(
                kind,
                pulse.startSeconds,
                pulse.endSeconds,
                () -> Words.of(
                        "no transition for %s (%.1f periods) to the end of the %s, the signal stays %s",
                        Words.seconds(pulse.seconds()),
                        pulse.seconds() / limits.periodSeconds(),
                        last ? "capture" : "recording before a gap",
                        pulse.high ? "high" : "low"));
    }

    /** Whether an instant lies in a silent span; to be asked in rising order. */
    boolean covers(double seconds) {
        while (next < spans.size() && spans.get(next)[1] < seconds) {
            next++;
        }
        return next < spans.size() && spans.get(next)[0] <= seconds;
    }

    /** Whether one begins at the end of a cycle. */
    boolean beginsAt(double seconds) {
        return spans.stream().anyMatch(span -> span[0] == seconds);
    }
}
