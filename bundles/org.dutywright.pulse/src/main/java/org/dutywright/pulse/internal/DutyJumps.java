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
 * known, else by its duty in either direction. A single cycle with an odd duty is one event.
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
        CycleTable.Cursor cursor = channel.cycles().cursor();
        Cycle before = null;
        double jumpedFrom = Double.NaN;
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            boolean jumped = before != null && follows(before, cycle) && jumps(before.dutyPercent(), cycle);
            boolean back = jumped && !jumps(jumpedFrom, cycle) && !Double.isNaN(jumpedFrom);
            jumpedFrom = Double.NaN;
            if (jumped && !back && !matched(before, cycle)) {
                report(before, cycle);
                jumpedFrom = before.dutyPercent();
            }
            before = cycle;
        }
    }

    private static boolean follows(Cycle before, Cycle cycle) {
        return !before.disturbed()
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

    private boolean matched(Cycle before, Cycle cycle) throws IOException {
        for (ChannelAnalysis other : others) {
            if (matches(other, before, cycle)) {
                return true;
            }
        }
        return false;
    }

    private boolean matches(ChannelAnalysis other, Cycle before, Cycle cycle) throws IOException {
        Optional<Travel> own = channel.plan().travel();
        Optional<Travel> theirs = other.plan().travel();
        boolean inTravel = own.isPresent() && theirs.isPresent();
        double from = inTravel ? own.orElseThrow().percentAt(before.dutyPercent()) : before.dutyPercent();
        double to = inTravel ? own.orElseThrow().percentAt(cycle.dutyPercent()) : cycle.dutyPercent();
        double sense = Math.signum(to - from);

        double period = other.medianPeriodSeconds().orElse(cycle.periodSeconds());
        double until = cycle.endSeconds() + period;
        double lowest = Double.NaN;
        double highest = Double.NaN;
        double sameWay = 0;
        double uOther = 0;
        SpilledCycles table = other.cycles();
        for (long i = table.firstEndingAfter(before.startSeconds() - period); i < table.size(); i++) {
            Cycle seen = table.get(i);
            if (seen.startSeconds() > until) {
                break;
            }
            if (seen.disturbed()) {
                continue;
            }
            double value = inTravel ? theirs.orElseThrow().percentAt(seen.dutyPercent()) : seen.dutyPercent();
            double along = sense * value;
            sameWay = Double.isNaN(lowest) ? 0 : Math.max(sameWay, along - lowest);
            lowest = Double.isNaN(lowest) ? along : Math.min(lowest, along);
            highest = Double.isNaN(highest) ? along : Math.max(highest, along);
            uOther = uDutyPercent(other, seen);
        }
        if (inTravel) {
            return sameWay >= settings.get(EventSettings.DUTY_JUMP_MATCH) / 100 * Math.abs(to - from);
        }
        double least = Math.max(settings.get(EventSettings.DUTY_JUMP_POINTS), sigmas * uOther);
        return highest - lowest > least;
    }
}
