// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
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

    /** Runts of one cycle that are looked at. */
    private static final int MOST_RUNTS = 1000;

    private final EventLimits limits;
    private final String unit;
    private final EventList events;
    private final SilentSpans silent;
    private final ShiftPlaces shifts;
    private final ExtraPulses extraPulses;
    private final LateEdges.Walk lateEdges;
    private final SpilledCycles table;
    private final RawCycle.Reader cycles;
    private final RuntPlaces runts;
    private final SpillLog.Reader<Mark> bounces;
    private final Deque<RawCycle> ahead = new ArrayDeque<>();
    private Mark bounce;
    /** End of the last cycle with absent pulses. */
    private double absentUntilSeconds = Double.NaN;

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
        silent.find(stages);
        LateEdges.find(stages.pulses(), limits, stages.lateEdges());
        lateEdges = new LateEdges.Walk(stages.lateEdges());
        extraPulses = new ExtraPulses(limits, events);
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
        double off = cycle.periodSeconds() - limits.periodSeconds();
        if (!cycle.named && isExplained(cycle, off)) {
            cycle.disturb();
        }
        if (!cycle.named) {
            extraPulses.name(ahead);
        }
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

    /**
     * Whether the odd length of a cycle belongs to an event that has a name already: where pulses are absent, the signal may
     * have left or come back in the middle of a pulse, and an edge that takes long is late.
     */
    private boolean isExplained(RawCycle cycle, double off) throws IOException {
        double late = lateEdges.latest(cycle.startSeconds, cycle.endSeconds);
        if (Math.abs(off) <= limits.excursionSeconds()) {
            return false;
        }
        return Math.abs(off) - late <= limits.excursionSeconds() || (off < 0 && besideAbsence(cycle));
    }

    private boolean besideAbsence(RawCycle cycle) {
        if (cycle.startSeconds == absentUntilSeconds || silent.beginsAt(cycle.endSeconds)) {
            return true;
        }
        return ahead.stream()
                .skip(1)
                .limit(1)
                .anyMatch(next -> next.startSeconds == cycle.endSeconds && limits.absent(next.periodSeconds()) > 0);
    }

    private void absences(RawCycle cycle) throws IOException {
        long due = limits.absent(cycle.periodSeconds());
        if (due > 0) {
            absentUntilSeconds = cycle.endSeconds;
        }
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
        int first = (int) Math.max(0, Math.floor(from - 1.5) + 1);
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
}
