// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Status;
import org.dutywright.sensor.Sensor.SensorChannel;

/**
 * What is known of one channel of the sensor that has a PWM channel in the capture.
 *
 * @param spec the sensor's channel
 * @param measured what was measured on it
 * @param lines its lines by what follows its name and a dot
 * @param interruptions the first ones of it that came back
 */
record ChannelEvidence(
        SensorChannel spec, ChannelMeasurement measured, Map<String, Line> lines, List<Interruption> interruptions) {

    ChannelEvidence {
        lines = Map.copyOf(lines);
        interruptions = List.copyOf(interruptions);
    }

    String name() {
        return spec.name();
    }

    boolean ok() {
        return measured.role() == Role.PWM && measured.status() == Status.OK;
    }

    boolean fails(String what) {
        Line line = lines.get(what);
        return line != null && line.result() == LineResult.FAIL;
    }

    /** Whether a value lies above its upper limit by the sensor's rule. */
    boolean failsAbove(String what) {
        return fails(what)
                && lines.get(what).upper().isPresent()
                && lines.get(what).measured().orElseThrow()
                        > lines.get(what).upper().getAsDouble();
    }

    boolean failsBelow(String what) {
        return fails(what)
                && lines.get(what).lower().isPresent()
                && lines.get(what).measured().orElseThrow()
                        < lines.get(what).lower().getAsDouble();
    }

    /** No limit of a level or transition is passed, and no level moved: electrically nothing is wrong. */
    boolean levelsPerfect() {
        return ok()
                && !fails("lowLevel")
                && !fails("highLevel")
                && !fails("transition.rise")
                && !fails("transition.fall")
                && !fails("events.level-shift");
    }

    long count(EventKind kind) {
        return measured.eventCounts().getOrDefault(kind, 0L);
    }

    List<PulseEvent> events(EventKind kind) {
        return measured.events().stream().filter(it -> it.kind() == kind).toList();
    }

    /** Median period, a hundredth of a second where the channel has none: only used as a time scale. */
    double periodSeconds() {
        return measured.medianPeriodSeconds().orElse(0.01);
    }

    Optional<Statistic> statistic(String id) {
        return Optional.ofNullable(measured.results().get(id))
                .map(Result::outcome)
                .filter(Outcome.OfCycles.class::isInstance)
                .map(it -> ((Outcome.OfCycles) it).statistic());
    }
}
