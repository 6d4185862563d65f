// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.dutywright.pulse.ChannelPlan.Travel;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.EventSettings;
import org.dutywright.pulse.PulseSettings;

/**
 * Finds changes of duty from one cycle to the next that no other channel shares.
 *
 * <p>A fast stroke moves the duty of a healthy sensor by several points a cycle, so a change counts only if no other
 * channel moves at the same time, give or take a cycle: in travel and the same way where the end points of both are
 * known, else by its duty in either direction. Where there is no other channel, or it is silent, a change that goes on in the
 * cycle before or after is a movement. A single cycle with an odd duty is one event, and one that comes of a late edge is
 * none.
 */
public final class DutyJumps {
    private final ChannelAnalysis channel;
    private final List<ChannelAnalysis> others;
    private final PulseSettings settings;
    private final double jumpPoints;
    private final double sigmas;

    private DutyJumps(ChannelAnalysis channel, List<ChannelAnalysis> others, PulseSettings settings) {
        this.channel = channel;
        this.others = others;
        this.settings = settings;
        jumpPoints = settings.get(EventSettings.DUTY_JUMP);
        sigmas = settings.get(EventSettings.EVENT_SIGMA);
    }

    /** Adds the jumps of a channel to its events. */
    public static void find(ChannelAnalysis channel, List<ChannelAnalysis> others, PulseSettings settings)
            throws IOException {
        new DutyJumps(channel, others, settings).walk();
    }

    private void walk() throws IOException {
        LateEdges.Walk late = new LateEdges.Walk(channel.lateEdges().orElseThrow());
        CycleTable.Cursor cursor = channel.cycles().cursor();
        Cycle twoBefore = null;
        Cycle before = null;
        Cycle cycle = cursor.next();
        double jumpedFrom = Double.NaN;
        while (cycle != null) {
            Cycle next = cursor.next();
            boolean jumped = follows(before, cycle) && jumps(before.dutyPercent(), cycle);
            boolean back = jumped && !jumps(jumpedFrom, cycle) && !Double.isNaN(jumpedFrom);
            jumpedFrom = Double.NaN;
            if (jumped && !back && !ofLateEdge(late, before, cycle) && !matched(twoBefore, before, cycle, next)) {
                report(before, cycle);
                jumpedFrom = before.dutyPercent();
            }
            twoBefore = before;
            before = cycle;
            cycle = next;
        }
    }

    private boolean ofLateEdge(LateEdges.Walk late, Cycle before, Cycle cycle) throws IOException {
        double origin = channel.originSeconds();
        double most = late.latest(before.startSeconds() - origin, cycle.endSeconds() - origin);
        double change = Math.abs(cycle.dutyPercent() - before.dutyPercent());
        return most > 0 && change - 100 * most / cycle.periodSeconds() <= jumpPoints;
    }

    private static boolean follows(Cycle before, Cycle cycle) {
        return before != null
                && cycle != null
                && !before.disturbed()
                && !cycle.disturbed()
                && cycle.startSeconds() - before.endSeconds() < cycle.periodSeconds() / 1000;
    }

    private boolean jumps(double fromPercent, Cycle cycle) {
        double change = Math.abs(cycle.dutyPercent() - fromPercent);
        return change > Math.max(jumpPoints, sigmas * Math.sqrt(2) * uDutyPercent(channel, cycle));
    }

    /** Standard uncertainty of the duty of one cycle in points: three edges, see the duty measurement. */
    private static double uDutyPercent(ChannelAnalysis of, Cycle cycle) {
        double duty = cycle.dutyPercent() / 100;
        double factor = Math.sqrt(1 + (1 - duty) * (1 - duty) + duty * duty);
        return 100 * of.uEdgeSeconds() / cycle.periodSeconds() * factor;
    }

    private void report(Cycle before, Cycle cycle) {
        double origin = channel.originSeconds();
        channel.events()
                .add(
                        EventKind.DUTY_JUMP,
                        cycle.startSeconds() - origin,
                        cycle.endSeconds() - origin,
                        () -> Words.of(
                                "the duty went from %.2f %% to %.2f %% within one cycle%s",
                                before.dutyPercent(),
                                cycle.dutyPercent(),
                                others.isEmpty() ? "" : ", no other channel moved with it"));
    }

    private boolean matched(Cycle twoBefore, Cycle before, Cycle cycle, Cycle next) throws IOException {
        boolean compared = false;
        for (ChannelAnalysis other : others) {
            Seen seen = new Seen(other, before, cycle);
            if (seen.matches()) {
                return true;
            }
            compared |= seen.spansChange;
        }
        return !compared && goesOn(twoBefore, before, cycle, next);
    }

    /**
     * Where nothing can be compared, a change that goes on from cycle to cycle is a movement. At the end of a recording nothing
     * tells whether it would go on.
     */
    private boolean goesOn(Cycle twoBefore, Cycle before, Cycle cycle, Cycle next) {
        if (next == null) {
            return true;
        }
        double change = cycle.dutyPercent() - before.dutyPercent();
        double least = settings.get(EventSettings.DUTY_JUMP_MATCH) / 100;
        return (follows(twoBefore, before) && (before.dutyPercent() - twoBefore.dutyPercent()) / change >= least)
                || (follows(cycle, next) && (next.dutyPercent() - cycle.dutyPercent()) / change >= least);
    }

    /** How another channel moved around a change. */
    private final class Seen {
        private final boolean inTravel;
        private final double change;
        private double lowest = Double.NaN;
        private double highest = Double.NaN;
        private double sameWay;
        private double uOther;
        private long cycles;
        private boolean seenBefore;
        /** Whether there are cycles before and after the change. */
        private boolean spansChange;

        Seen(ChannelAnalysis other, Cycle before, Cycle cycle) throws IOException {
            Optional<Travel> own = channel.plan().travel();
            Optional<Travel> theirs = other.plan().travel();
            inTravel = own.isPresent() && theirs.isPresent();
            change = inTravel
                    ? own.orElseThrow().percentAt(cycle.dutyPercent())
                            - own.orElseThrow().percentAt(before.dutyPercent())
                    : cycle.dutyPercent() - before.dutyPercent();
            double period = other.medianPeriodSeconds().orElse(cycle.periodSeconds());
            SpilledCycles table = other.cycles();
            for (long i = table.firstEndingAfter(before.startSeconds() - period); i < table.size(); i++) {
                Cycle seen = table.get(i);
                if (seen.startSeconds() > cycle.endSeconds() + period) {
                    break;
                }
                if (!seen.disturbed()) {
                    seenBefore |= seen.startSeconds() <= before.middleSeconds();
                    add(inTravel ? theirs.orElseThrow().percentAt(seen.dutyPercent()) : seen.dutyPercent());
                    uOther = uDutyPercent(other, seen);
                    spansChange = seenBefore && cycles > 1 && seen.endSeconds() >= cycle.middleSeconds();
                }
            }
        }

        private void add(double value) {
            double along = Math.signum(change) * value;
            sameWay = cycles == 0 ? 0 : Math.max(sameWay, along - lowest);
            lowest = cycles == 0 ? along : Math.min(lowest, along);
            highest = cycles == 0 ? along : Math.max(highest, along);
            cycles++;
        }

        boolean matches() {
            if (inTravel) {
                return sameWay >= settings.get(EventSettings.DUTY_JUMP_MATCH) / 100 * Math.abs(change);
            }
            double least = Math.max(settings.get(EventSettings.DUTY_JUMP_POINTS), sigmas * uOther);
            return highest - lowest > least;
        }
    }
}
