// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.io.IOException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.sensor.Sensor;

/** Checks of measurements made by hand. */
final class Checks {
    private Checks() {}

    static CheckSettings supply(double volts) {
        return new CheckSettings(OptionalDouble.of(volts), Optional.empty());
    }

    static CheckSettings at(Position position) {
        return new CheckSettings(OptionalDouble.empty(), Optional.of(position));
    }

    static CaptureMeasurement measurement(List<Fitness> fitness, ChannelMeasurement... channels) {
        List<String> names =
                Arrays.stream(channels).map(it -> it.channel().name()).toList();
        double[][] values = new double[channels.length][];
        for (int i = 0; i < channels.length; i++) {
            // Flat at the low level: samples are only asked for around dropouts.
            values[i] = new double[20_000];
            Arrays.fill(
                    values[i], channels[i].levels().map(it -> it.low().value()).orElse(0.0));
        }
        List<String> units =
                Arrays.stream(channels).map(it -> it.channel().unit()).toList();
        Capture capture = Captures.ofArrays(names, units, 0, 10_000, values);
        return new CaptureMeasurement(capture, PulseSettings.defaults(), fitness, List.of(channels));
    }

    /** A measurement of samples taken at another rate. */
    static CaptureMeasurement atRate(double sampleRateHz, ChannelMeasurement... channels) {
        List<String> names =
                Arrays.stream(channels).map(it -> it.channel().name()).toList();
        double[][] values = new double[channels.length][(int) (2 * sampleRateHz)];
        List<String> units = names.stream().map(it -> "V").toList();
        Capture capture = Captures.ofArrays(names, units, 0, sampleRateHz, values);
        return new CaptureMeasurement(capture, PulseSettings.defaults(), List.of(), List.of(channels));
    }

    /** The same measurement over other samples: a flat level in volts for each channel. */
    static CaptureMeasurement over(CaptureMeasurement measurement, double... volts) {
        double[][] values = new double[volts.length][20_000];
        for (int i = 0; i < volts.length; i++) {
            Arrays.fill(values[i], volts[i]);
        }
        Capture old = measurement.capture();
        Capture capture = Captures.ofArrays(
                old.channels().stream().map(Channel::name).toList(),
                old.channels().stream().map(Channel::unit).toList(),
                0,
                10_000,
                values);
        return new CaptureMeasurement(capture, measurement.settings(), measurement.fitness(), measurement.channels());
    }

    static CheckResult check(Sensor sensor, CheckSettings settings, ChannelMeasurement... channels) throws IOException {
        return check(sensor, settings, measurement(List.of(), channels));
    }

    static CheckResult check(Sensor sensor, CheckSettings settings, CaptureMeasurement measurement) throws IOException {
        ChannelMatch match = Checker.match(sensor, measurement.capture(), Map.of());
        return Checker.check(measurement, sensor, match, settings, Progress.NONE);
    }

    /** The lines by item. */
    static Map<String, Line> lines(CheckResult result) {
        Map<String, Line> lines = new LinkedHashMap<>();
        result.lines().forEach(line -> lines.put(line.item(), line));
        return lines;
    }
}
