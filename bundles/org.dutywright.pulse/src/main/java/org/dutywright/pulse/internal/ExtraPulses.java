// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.util.Deque;
import java.util.Iterator;
import org.dutywright.pulse.EventKind;

/** Finds edges into the active level that make several cycles out of one period. */
final class ExtraPulses {
    /** How far the cycles around an extra pulse may together be off the period. */
    private static final double SUM_TOLERANCE = 0.25;

    private final EventLimits limits;
    private final EventList events;

    ExtraPulses(EventLimits limits, EventList events) {
        this.limits = limits;
        this.events = events;
    }

    /** Names the edges that make the cycle at the head of the queue and those after it out of one period. */
    void name(Deque<RawCycle> ahead) {
        int group = group(ahead);
        if (group == 0) {
            return;
        }
        RawCycle before = null;
        int taken = 0;
        for (Iterator<RawCycle> it = ahead.iterator(); it.hasNext() && taken < Math.max(2, group); taken++) {
            RawCycle cycle = it.next();
            if (before != null) {
                name(before, cycle);
            }
            if (taken < group) {
                cycle.disturb();
            }
            before = cycle;
        }
        if (taken == 1) {
            RawCycle lone = ahead.element();
            events.add(EventKind.EXTRA_PULSE, lone.endSeconds, lone.endSeconds, () -> detail(lone));
        }
    }

    // A pulse into the active state and one out of it both make one active edge too many; the shorter one is extra.
    private void name(RawCycle before, RawCycle after) {
        double passive = before.endSeconds - before.switchSeconds;
        double active = after.switchSeconds - after.startSeconds;
        double start = passive < active ? before.switchSeconds : after.startSeconds;
        double end = passive < active ? after.startSeconds : after.switchSeconds;
        RawCycle shorter = before.periodSeconds() < after.periodSeconds() ? before : after;
        events.add(EventKind.EXTRA_PULSE, start, end, () -> detail(shorter));
    }

    private String detail(RawCycle cycle) {
        return Words.of(
                "two active edges lie %s apart (%.2f periods)",
                Words.seconds(cycle.periodSeconds()), cycle.periodSeconds() / limits.periodSeconds());
    }

    /** Number of cycles from the head of the queue on that an extra pulse makes too short, 0 if there is none. */
    private int group(Deque<RawCycle> ahead) {
        double period = limits.periodSeconds();
        RawCycle first = ahead.element();
        if (first.periodSeconds() >= period - limits.excursionSeconds()) {
            return 0;
        }
        boolean shortOne = false;
        double sum = 0;
        int count = 0;
        RawCycle before = null;
        for (RawCycle cycle : ahead) {
            if (before != null && before.endSeconds != cycle.startSeconds) {
                break;
            }
            sum += cycle.periodSeconds();
            count++;
            shortOne |= cycle.periodSeconds() < limits.extraWithinSeconds();
            if (count > 1 && shortOne && Math.abs(sum - period) <= SUM_TOLERANCE * period) {
                return count;
            }
            if (sum > (1 + SUM_TOLERANCE) * period) {
                break;
            }
            before = cycle;
        }
        return first.periodSeconds() < limits.extraWithinSeconds() ? 1 : 0;
    }
}
