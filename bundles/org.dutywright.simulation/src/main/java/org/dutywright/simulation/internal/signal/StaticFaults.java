// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.List;
import java.util.Optional;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Fault;
import org.dutywright.simulation.Recording;

/** The truth about faults whose place the scenario states itself: nothing depends on where the carrier stands. */
final class StaticFaults {

    /** Where the events of the public interface begin: shares of swing and period, points of duty. */
    private static final double LEVEL_SHIFT_SHARE = 0.05;

    private static final double PERIOD_EXCURSION_SHARE = 0.05;
    private static final double DUTY_JUMP_POINTS = 5;

    private StaticFaults() {}

    static void tell(ChannelModel channel, List<Fault> faults, Recording recording, SignalTruth truth) {
        for (Fault fault : faults) {
            if (hasStatedPlace(fault)) {
                truth.happened(new Happening(
                        fault, fault.startSeconds(), fault.endSeconds(), event(channel, fault, recording)));
            }
        }
    }

    private static boolean hasStatedPlace(Fault fault) {
        return switch (fault) {
            case Fault.GroundLift f -> true;
            case Fault.LevelShift f -> true;
            case Fault.Frequency f -> true;
            case Fault.Ratio f -> true;
            case Fault.DutyJump f -> true;
            case Fault.SlowEdges f -> true;
            case Fault.NoiseBurst f -> true;
            default -> false;
        };
    }

    private static Optional<String> event(ChannelModel channel, Fault fault, Recording recording) {
        double limitVolts = LEVEL_SHIFT_SHARE * channel.swingVolts();
        // What holds from the first sample to the last moves nothing.
        boolean changes = fault.startSeconds() > recording.startSeconds()
                || fault.endSeconds() < recording.secondsAt(recording.instants() - 1);
        // The channel's period is the median: a fault of the longer part of the recording makes the rest odd.
        boolean minority = fault.endSeconds() - fault.startSeconds() < recording.durationSeconds() / 2;
        return switch (fault) {
            case Fault.GroundLift lift -> when(changes && Math.abs(lift.volts()) > limitVolts, "level-shift");
            case Fault.LevelShift shift ->
                when(
                        changes && Math.max(Math.abs(shift.lowVolts()), Math.abs(shift.highVolts())) > limitVolts,
                        "level-shift");
            case Fault.Frequency frequency ->
                when(minority && Math.abs(1 / frequency.factor() - 1) > PERIOD_EXCURSION_SHARE, "period-excursion");
            case Fault.DutyJump jump -> when(Math.abs(jump.offsetPercent()) > DUTY_JUMP_POINTS, "duty-jump");
            case Fault.SlowEdges slow -> Optional.of("slow-edge");
            default -> Optional.empty();
        };
    }

    private static Optional<String> when(boolean holds, String event) {
        return holds ? Optional.of(event) : Optional.empty();
    }
}
