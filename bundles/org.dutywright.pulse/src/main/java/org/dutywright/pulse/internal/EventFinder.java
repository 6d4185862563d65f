// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.internal.MarkLog.Mark;

/**
 * Judges the cycles of one channel in order and names what is wrong with them: one place, one event, the first that fits
 * in the order of {@link EventKind}. One exception: where a runt stands in the place of a pulse, the place is named runt,
 * not missing pulse, for the pulse is there and too low.
 *
 * <p>Disturbed, so out of the statistics, are cycles with a dropout, missing pulse, runt, bounce, extra pulse or period
 * excursion, and those in which a level shift begins or ends. A duty jump and a slow edge do not disturb: the value
 * itself is the fault there, and must stay among the values that are judged.
 */
final class EventFinder {
    /** Cycles looked at together: a pulse more than this many extra ones in one period is noise. */
    private static final int AHEAD = 8;

    /** How far the cycles around an extra pulse may together be off the period. */
    private static final double SUM_TOLERANCE = 0.25;

    private final EventLimits limits;
    private final EventList events;
    private final SilentSpans silent;
    private final ShiftPlaces shifts;
    private final SpilledCycles table;
    private final RawCycle.Reader cycles;
    private final RuntPlaces runts;
    private final MarkLog.Reader bounces;
    private final Deque<RawCycle> ahead = new ArrayDeque<>();
    private Mark bounce;

    private EventFinder(
            PulseStages stages,
            boolean activeHigh,
            EventLimits limits,
            States states,
            EventList events,
            SpilledCycles table)
            throws IOException {
        this.limits = limits;
        this.events = events;
        this.table = table;
        silent = new SilentSpans(limits, events);
        silent.find(stages.pulses());
        shifts = new ShiftPlaces(stages, states, limits, events);
        cycles = new RawCycle.Reader(stages.pulses(), activeHigh);
        runts = new RuntPlaces(stages, states, limits.periodSeconds());
        bounces = stages.bounces().reader();
        bounce = bounces.next();
    }

    /** Judges all cycles, writes them into the table and their events into the list. */
    static void run(
            PulseStages stages,
            boolean activeHigh,
            EventLimits limits,
            States states,
            EventList events,
            SpilledCycles table)
            throws IOException {
        new EventFinder(stages, activeHigh, limits, states, events, table).all();
    }

    private void all() throws IOException {
        fill();
        while (!ahead.isEmpty()) {
            RawCycle cycle = ahead.element();
            outside(cycle.startSeconds);
            judge(cycle);
            table.add(ahead.remove());
            fill();
        }
        outside(Double.POSITIVE_INFINITY);
    }

    private void fill() throws IOException {
        while (ahead.size() < AHEAD) {
            RawCycle cycle = cycles.next();
            if (cycle == null) {
                return;
            }
            ahead.add(cycle);
        }
    }

    /** What lies before the first cycle, between segments and after the last cycle. */
    private void outside(double untilSeconds) throws IOException {
        for (Mark mark = runts.nextBefore(untilSeconds); mark != null; mark = runts.nextBefore(untilSeconds)) {
            if (!silent.covers(mark.startSeconds())) {
                runt(mark);
            }
        }
        for (; bounce != null && bounce.startSeconds() < untilSeconds; bounce = bounces.next()) {
            bounced(bounce);
        }
    }

    private void judge(RawCycle cycle) throws IOException {
        long absent = limits.absent(cycle.periodSeconds());
        if (absent >= limits.dropoutPulses()) {
            dropout(cycle, absent);
        } else {
            boolean[] stunted = runtsIn(cycle, absent);
            missing(cycle, absent, stunted);
        }
        for (; bounce != null && bounce.startSeconds() < cycle.endSeconds; bounce = bounces.next()) {
            bounced(bounce);
            cycle.disturb();
        }
        if (!cycle.named) {
            extra();
        }
        double off = cycle.periodSeconds() - limits.periodSeconds();
        if (!cycle.named && Math.abs(off) > limits.excursionSeconds()) {
            events.add(
                    EventKind.PERIOD_EXCURSION,
                    cycle.startSeconds,
                    cycle.endSeconds,
                    () -> Words.of(
                            "the cycle lasted %s, %+.1f %% off the median of %s",
                            Words.seconds(cycle.periodSeconds()),
                            100 * off / limits.periodSeconds(),
                            Words.seconds(limits.periodSeconds())));
            cycle.disturb();
        }
        if (shifts.touches(cycle)) {
            cycle.disturbed = true;
        }
    }

    private void dropout(RawCycle cycle, long absent) throws IOException {
        double active = cycle.switchSeconds - cycle.startSeconds;
        double passive = cycle.endSeconds - cycle.switchSeconds;
        double start = active > passive ? cycle.startSeconds : cycle.switchSeconds;
        double end = active > passive ? cycle.switchSeconds : cycle.endSeconds;
        events.add(
                EventKind.DROPOUT,
                start,
                end,
                () -> Words.of("%d pulses are absent, no transition for %s", absent, Words.seconds(end - start)));
        cycle.disturb();
        Mark mark;
        do {
            mark = runts.nextBefore(cycle.endSeconds);
        } while (mark != null);
    }

    /** Names the runts of a cycle; tells which of its absent pulses they stand for. */
    private boolean[] runtsIn(RawCycle cycle, long absent) throws IOException {
        boolean[] stunted = new boolean[(int) absent];
        for (Mark mark = runts.nextBefore(cycle.endSeconds); mark != null; mark = runts.nextBefore(cycle.endSeconds)) {
            runt(mark);
            cycle.disturb();
            double periods = (mark.startSeconds() - cycle.startSeconds) / limits.periodSeconds();
            double endPeriods = (mark.endSeconds() - cycle.startSeconds) / limits.periodSeconds();
            for (int i = 0; i < absent; i++) {
                stunted[i] |= periods < i + 1.25 && endPeriods > i + 0.75;
            }
        }
        return stunted;
    }

    private void missing(RawCycle cycle, long absent, boolean[] stunted) {
        for (int i = 0; i < absent; i++) {
            cycle.disturb();
            if (!stunted[i]) {
                double due = cycle.startSeconds + (i + 1) * limits.periodSeconds();
                double until = Math.min(cycle.endSeconds, due + limits.periodSeconds());
                events.add(
                        EventKind.MISSING_PULSE,
                        Math.min(due, cycle.endSeconds),
                        until,
                        () -> Words.of(
                                "no pulse where one was due, active edges lie %s apart (%.2f periods)",
                                Words.seconds(cycle.periodSeconds()), cycle.periodSeconds() / limits.periodSeconds()));
            }
        }
    }

    private void runt(Mark mark) {
        events.add(
                EventKind.RUNT,
                mark.startSeconds(),
                mark.endSeconds(),
                () -> Words.of(
                        "left the %s state as far as %.4g for %s and did not reach the other one",
                        mark.high() ? "high" : "low",
                        mark.value(),
                        Words.seconds(mark.endSeconds() - mark.startSeconds())));
    }

    private void bounced(Mark mark) {
        events.add(
                EventKind.BOUNCE,
                mark.startSeconds(),
                mark.endSeconds(),
                () -> Words.of(
                        "%.0f further transitions after the %s edge",
                        mark.value(), mark.high() ? "rising" : "falling"));
    }

    /** Names the edges that make the cycle at the head of the queue and those after it out of one period. */
    private void extra() {
        int group = extraGroup();
        if (group == 0) {
            return;
        }
        RawCycle before = null;
        int taken = 0;
        for (Iterator<RawCycle> it = ahead.iterator(); it.hasNext() && taken < Math.max(2, group); taken++) {
            RawCycle cycle = it.next();
            if (before != null) {
                extraPulse(before, cycle);
            }
            if (taken < group) {
                cycle.disturb();
            }
            before = cycle;
        }
        if (taken == 1) {
            RawCycle lone = ahead.element();
            events.add(EventKind.EXTRA_PULSE, lone.endSeconds, lone.endSeconds, () -> extraDetail(lone));
        }
    }

    // A pulse into the active state and one out of it both make one active edge too many; the shorter one is extra.
    private void extraPulse(RawCycle before, RawCycle after) {
        double passive = before.endSeconds - before.switchSeconds;
        double active = after.switchSeconds - after.startSeconds;
        double start = passive < active ? before.switchSeconds : after.startSeconds;
        double end = passive < active ? after.startSeconds : after.switchSeconds;
        events.add(EventKind.EXTRA_PULSE, start, end, () -> extraDetail(before));
    }

    private String extraDetail(RawCycle cycle) {
        return Words.of(
                "two active edges lie %s apart (%.2f periods)",
                Words.seconds(cycle.periodSeconds()), cycle.periodSeconds() / limits.periodSeconds());
    }

    /** Number of cycles from the head of the queue on that an extra pulse makes too short, 0 if there is none. */
    private int extraGroup() {
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
