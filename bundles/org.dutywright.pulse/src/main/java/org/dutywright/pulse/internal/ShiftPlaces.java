// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.internal.MarkLog.Mark;

/** Names the level shifts of both states, and tells in which cycles they begin or end. */
final class ShiftPlaces {
    private final States states;
    private final EventLimits limits;
    private final String unit;
    private final EventList events;
    private final Walk low;
    private final Walk high;

    ShiftPlaces(PulseStages stages, States states, EventLimits limits, String unit, EventList events)
            throws IOException {
        this.states = states;
        this.limits = limits;
        this.unit = unit;
        this.events = events;
        low = new Walk(stages.lowShifts().reader());
        high = new Walk(stages.highShifts().reader());
        nameAll(stages);
    }

    // A shift of both states at once, as by a moved ground, is one event.
    private void nameAll(PulseStages stages) throws IOException {
        SpillLog.Reader<Mark> lows = stages.lowShifts().reader();
        SpillLog.Reader<Mark> highs = stages.highShifts().reader();
        Mark lowMark = lows.next();
        Mark highMark = highs.next();
        while (lowMark != null || highMark != null) {
            if (lowMark != null && highMark != null && together(lowMark, highMark)) {
                name(lowMark, highMark);
                lowMark = lows.next();
                highMark = highs.next();
            } else if (highMark == null || (lowMark != null && lowMark.startSeconds() <= highMark.startSeconds())) {
                name(lowMark, null);
                lowMark = lows.next();
            } else {
                name(highMark, null);
                highMark = highs.next();
            }
        }
    }

    private boolean together(Mark one, Mark other) {
        return Math.abs(one.startSeconds() - other.startSeconds()) <= 2 * limits.periodSeconds()
                && Math.abs(one.endSeconds() - other.endSeconds()) <= 2 * limits.periodSeconds();
    }

    private void name(Mark mark, Mark other) {
        double start = other == null ? mark.startSeconds() : Math.min(mark.startSeconds(), other.startSeconds());
        double end = other == null ? mark.endSeconds() : Math.max(mark.endSeconds(), other.endSeconds());
        events.add(
                EventKind.LEVEL_SHIFT,
                start,
                end,
                () -> other == null ? detail(mark) : detail(mark) + ", " + detail(other));
    }

    private String detail(Mark mark) {
        double from = mark.high() ? states.firstHigh() : states.firstLow();
        return Words.of(
                "the %s level was %s instead of %s",
                mark.high() ? "high" : "low", Words.prefixed(mark.value(), unit), Words.prefixed(from, unit));
    }

    /** Whether a shift begins or ends in a cycle; to be asked in rising order. */
    boolean touches(RawCycle cycle) throws IOException {
        boolean lowTouches = low.touches(cycle);
        return high.touches(cycle) || lowTouches;
    }

    /** Walks over the shifts of one state beside the cycles. */
    private static final class Walk {
        private final SpillLog.Reader<Mark> reader;
        private Mark mark;

        Walk(SpillLog.Reader<Mark> reader) throws IOException {
            this.reader = reader;
            mark = reader.next();
        }

        boolean touches(RawCycle cycle) throws IOException {
            boolean touches = false;
            while (mark != null && mark.endSeconds() <= cycle.endSeconds) {
                touches |= mark.endSeconds() > cycle.startSeconds || cycle.contains(mark.startSeconds());
                mark = reader.next();
            }
            return touches || (mark != null && cycle.contains(mark.startSeconds()));
        }
    }
}
