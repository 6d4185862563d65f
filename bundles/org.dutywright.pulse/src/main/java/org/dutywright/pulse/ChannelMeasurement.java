// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.Channel;

/**
 * What was measured on one channel.
 *
 * @param channel the channel
 * @param role its role, given or found
 * @param active its active level, given or assumed
 * @param status whether it could be measured; OK for roles without pulses
 * @param statusReason why not, empty if OK
 * @param levels the two state levels; empty unless there are two states
 * @param level summary of all samples, for every channel but ignored ones
 * @param medianPeriodSeconds median period T of the cycles, empty without cycles
 * @param cycleCount whole cycles, disturbed ones included
 * @param disturbedCount those kept out of the statistics
 * @param results of all measurements, by id, in order
 * @param eventCounts all events counted, kinds without events absent
 * @param events listed ones, at most 1,000 of a kind, by start
 * @param cycles all cycles; empty table unless PWM and OK
 * @param edgeInstants how the instants of its transitions were found
 */
public record ChannelMeasurement(
        Channel channel,
        Role role,
        ActiveLevel active,
        Status status,
        String statusReason,
        Optional<StateLevels> levels,
        Optional<LevelSummary> level,
        Optional<Double> medianPeriodSeconds,
        long cycleCount,
        long disturbedCount,
        Map<String, Result> results,
        Map<EventKind, Long> eventCounts,
        List<PulseEvent> events,
        CycleTable cycles,
        EdgeInstants edgeInstants) {}
