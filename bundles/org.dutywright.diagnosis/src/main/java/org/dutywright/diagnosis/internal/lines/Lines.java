// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.ChannelMatch;
import org.dutywright.diagnosis.CheckSettings;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.internal.lines.LineJudge.Limits;
import org.dutywright.diagnosis.internal.lines.LineJudge.Value;
import org.dutywright.diagnosis.internal.lines.RecordingFitness.Aspect;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Fitness;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.Duty;
import org.dutywright.sensor.Sensor.Range;
import org.dutywright.sensor.Sensor.SensorChannel;

/** All lines of a check. */
public final class Lines {
    private Lines() {}

    /** Makes the lines: those of the sensor's channels in its order, then the supply. */
    public static List<Line> of(
            CaptureMeasurement measurement,
            Sensor sensor,
            ChannelMatch match,
            CheckSettings settings,
            Progress progress)
            throws IOException {
        RecordingFitness fitness = RecordingFitness.of(measurement);
        SupplyVoltage supply = SupplyVoltage.find(measurement, settings.supplyVolts());
        List<Line> lines = new ArrayList<>();
        for (SensorChannel channel : sensor.channels()) {
            Optional<ChannelMeasurement> measured = measured(measurement, match, channel);
            lines.addAll(
                    measured.isPresent()
                            ? ChannelLines.of(sensor, channel, measured.get(), fitness, supply, settings, progress)
                            : ChannelLines.missing(sensor, channel, noChannel(measurement, channel)));
        }
        sensor.supply().ifPresent(range -> lines.add(supplyLine(sensor, range, supply, fitness)));
        return lines;
    }

    /** What was measured on the channel that stands for one of the sensor, empty if there is none. */
    public static Optional<ChannelMeasurement> measured(
            CaptureMeasurement measurement, ChannelMatch match, SensorChannel channel) {
        String name = match.captureNames().get(channel.name());
        return measurement.channels().stream()
                .filter(it -> it.channel().name().equals(name))
                .findFirst();
    }

    /** What the sensor text leaves open. */
    public static List<String> absentLimits(Sensor sensor) {
        List<String> absent = new ArrayList<>();
        for (SensorChannel channel : sensor.channels()) {
            note(absent, channel.frequency().isPresent(), channel.name() + ": no limit for the frequency");
            note(absent, channel.lowLevel().isPresent(), channel.name() + ": no limit for the low level");
            note(absent, channel.highLevel().isPresent(), channel.name() + ": no limit for the high level");
            note(absent, channel.transitionMaxSeconds().isPresent(), channel.name() + ": no limit for transitions");
            Optional<Duty> duty = channel.duty();
            note(absent, duty.isPresent(), channel.name() + ": no duty at the ends of travel");
            note(
                    absent,
                    duty.isEmpty() || duty.get().tolerancePercent().isPresent(),
                    channel.name() + ": no tolerance for the duty");
        }
        note(absent, sensor.supply().isPresent(), "no limit for the supply");
        boolean several = sensor.channels().size() > 1;
        note(absent, !several || sensor.agreement().isPresent(), "no limit for the agreement of the channels");
        return absent;
    }

    private static void note(List<String> absent, boolean stated, String phrase) {
        if (!stated) {
            absent.add(phrase);
        }
    }

    private static String noChannel(CaptureMeasurement measurement, SensorChannel channel) {
        String names =
                measurement.channels().stream().map(it -> it.channel().name()).collect(Collectors.joining(", "));
        return "no channel of the capture stands for " + channel.name() + " (it has " + names
                + "); name one with --channel COLUMN=" + channel.name();
    }

    private static Line supplyLine(Sensor sensor, Range range, SupplyVoltage supply, RecordingFitness fitness) {
        // A supply limit relative to the supply itself means nothing, so only absolute ones count.
        OptionalDouble lower = absolute(range.min());
        OptionalDouble upper = absolute(range.max());
        Limits limits = new Limits(lower, upper, supply.origin());
        if (supply.volts().isEmpty()) {
            return LineJudge.notJudged(
                    "supply", "V", limits, "no supply channel was recorded and none given by --supply VOLTS");
        }
        Optional<Fitness> worst =
                supply.channel().flatMap(it -> fitness.worst(it.channel().name(), Aspect.LEVELS));
        Value value = new Value(supply.volts().getAsDouble(), supply.u(), "V", supply.budget());
        return new LineJudge(sensor.decision()).judged("supply", value, limits, worst, "");
    }

    private static OptionalDouble absolute(Optional<Sensor.Limit> limit) {
        return limit.isPresent() && !limit.get().percentOfSupply()
                ? OptionalDouble.of(limit.get().value())
                : OptionalDouble.empty();
    }
}
