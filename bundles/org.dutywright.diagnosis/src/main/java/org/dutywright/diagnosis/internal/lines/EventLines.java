// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.internal.lines.LineJudge.Limits;
import org.dutywright.diagnosis.internal.lines.RecordingFitness.Aspect;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Role;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.EventRule;
import org.dutywright.sensor.Sensor.SensorChannel;

/** The lines {@code NAME.events.KIND}: counts against 0 or what the sensor text allows. */
final class EventLines {
    /** Kinds that are judged even if the sensor text does not name them. */
    private static final Set<EventKind> ALWAYS = EnumSet.of(
            EventKind.MISSING_PULSE,
            EventKind.EXTRA_PULSE,
            EventKind.RUNT,
            EventKind.DROPOUT,
            EventKind.STUCK_LOW,
            EventKind.STUCK_HIGH,
            EventKind.LEVEL_SHIFT,
            EventKind.BOUNCE);

    private EventLines() {}

    static List<Line> of(Sensor sensor, SensorChannel channel, ChannelMeasurement measured, RecordingFitness fitness) {
        if (measured.role() != Role.PWM) {
            return missing(sensor, channel, SignalState.unusable(measured));
        }
        LineJudge judge = new LineJudge(sensor.decision());
        List<Line> lines = new ArrayList<>();
        for (EventKind kind : judgedKinds(sensor)) {
            Aspect aspect = kind == EventKind.LEVEL_SHIFT ? Aspect.LEVEL_SHIFTS : Aspect.EVENTS;
            Optional<Fitness> worst = fitness.worst(measured.channel().name(), aspect);
            long count = measured.eventCounts().getOrDefault(kind, 0L);
            lines.add(judge.counted(item(channel, kind), count, allowed(sensor, kind), worst));
        }
        return lines;
    }

    static List<Line> missing(Sensor sensor, SensorChannel channel, String reason) {
        return judgedKinds(sensor).stream()
                .map(kind -> LineJudge.notJudged(
                        item(channel, kind), "", new Limits(OptionalDouble.empty(), allowed(sensor, kind), ""), reason))
                .toList();
    }

    private static List<EventKind> judgedKinds(Sensor sensor) {
        return Arrays.stream(EventKind.values())
                .filter(kind -> ALWAYS.contains(kind) || sensor.events().containsKey(kind.word()))
                .toList();
    }

    private static OptionalDouble allowed(Sensor sensor, EventKind kind) {
        EventRule rule = sensor.events().get(kind.word());
        if (rule == null) {
            return OptionalDouble.of(0);
        }
        return rule.max().isPresent() ? OptionalDouble.of((double) rule.max().getAsLong()) : OptionalDouble.empty();
    }

    private static String item(SensorChannel channel, EventKind kind) {
        return channel.name() + ".events." + kind.word();
    }
}
