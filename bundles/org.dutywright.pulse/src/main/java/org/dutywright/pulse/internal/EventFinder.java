// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.internal.MarkLog.Mark;

/**
 * Judges the cycles of one channel in order and names what is wrong with them: one place, one event, the first that fits
 * in the order of {@link EventKind}. One exception: where a runt stands in the place of a pulse, the place is named runt,
 * and the pulse does not count as absent, for it is there and too low.
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

    /** Runts of one cycle that are looked at. */
    private static final int MOST_RUNTS = 1000;

    private final EventLimits limits;
    private final String unit;
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
            String unit,
            States states,
            EventList events,
            SpilledCycles table)
            throws IOException {
        this.limits = limits;
        this.unit = unit;
        this.events = events;
        this.table = table;
        silent = new SilentSpans(limits, events);
        silent.find(stages.pulses());
        shifts = new ShiftPlaces(stages, states, limits, unit, events);
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
            String unit,
            States states,
            EventList events,
            SpilledCycles table)
            throws IOException {
        new EventFinder(stages, activeHigh, limits, unit, states, events, table).all();
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
        absences(cycle);
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

    private void absences(RawCycle cycle) throws IOException {
        long due = limits.absent(cycle.periodSeconds());
        BitSet stunted = new BitSet();
        List<Mark> marks = new ArrayList<>();
        for (Mark mark = runts.nextBefore(cycle.endSeconds); mark != null; mark = runts.nextBefore(cycle.endSeconds)) {
            // a long silence may hold any number of them; these few tell already that it is one
            if (marks.size() < MOST_RUNTS) {
                marks.add(mark);
                stands(mark, cycle, due, stunted);
            }
        }
        if (due - stunted.cardinality() >= limits.dropoutPulses()) {
            dropout(cycle, due - stunted.cardinality());
            return;
        }
        for (Mark mark : marks) {
            runt(mark);
            cycle.disturb();
        }
        missing(cycle, due, stunted);
    }

    private void dropout(RawCycle cycle, long absent) {
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
    }

    /** Notes which of the pulses that were due in a cycle a runt stands for. */
    private void stands(Mark mark, RawCycle cycle, long due, BitSet stunted) {
        double from = (mark.startSeconds() - cycle.startSeconds) / limits.periodSeconds();
        double to = (mark.endSeconds() - cycle.startSeconds) / limits.periodSeconds();
        int first = (int) Math.max(0, Math.floor(from - 1.25) + 1);
        for (int i = first; i < Math.min(due, MOST_RUNTS) && to > i + 0.75; i++) {
            stunted.set(i);
        }
    }

    private void missing(RawCycle cycle, long due, BitSet stunted) {
        for (int i = 0; i < due; i++) {
            cycle.disturb();
            if (!stunted.get(i)) {
                double from = cycle.startSeconds + (i + 1) * limits.periodSeconds();
                double until = Math.min(cycle.endSeconds, from + limits.periodSeconds());
                events.add(
                        EventKind.MISSING_PULSE,
                        Math.min(from, cycle.endSeconds),
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
                        "left the %s state as far as %s for %s and did not reach the other one",
                        mark.high() ? "high" : "low",
                        Words.prefixed(mark.value(), unit),
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
        RawCycle shorter = before.periodSeconds() < after.periodSeconds() ? before : after;
        events.add(EventKind.EXTRA_PULSE, start, end, () -> extraDetail(shorter));
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
