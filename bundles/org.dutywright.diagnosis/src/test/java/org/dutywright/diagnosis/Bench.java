// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.sensor.Sensor;

/** Samples wires into a capture, measures it and checks it, as a user does. */
final class Bench {
    private static final double DEFAULT_RATE_HZ = 50_000;

    private final List<String> names = new ArrayList<>();
    private final List<double[]> values = new ArrayList<>();
    private final double sampleRateHz;
    private final double durationSeconds;
    private Sensor sensor = Sensors.twin();
    private CheckSettings settings = CheckSettings.none();

    private Bench(double sampleRateHz, double durationSeconds) {
        this.sampleRateHz = sampleRateHz;
        this.durationSeconds = durationSeconds;
    }

    static Bench seconds(double duration) {
        return new Bench(DEFAULT_RATE_HZ, duration);
    }

    static Bench at(double sampleRateHz, double duration) {
        return new Bench(sampleRateHz, duration);
    }

    Bench wire(String name, Wire wire) {
        names.add(name);
        Random noise = new Random(names.size());
        double[] samples = wire.sample(sampleRateHz, durationSeconds);
        for (int i = 0; i < samples.length; i++) {
            samples[i] += 0.015 * noise.nextGaussian();
        }
        values.add(samples);
        return this;
    }

    Bench against(Sensor value) {
        sensor = value;
        return this;
    }

    Bench with(CheckSettings value) {
        settings = value;
        return this;
    }

    CheckResult check() throws IOException {
        try (Capture capture = Captures.ofArrays(
                names, Collections.nCopies(names.size(), "V"), 0, sampleRateHz, values.toArray(double[][]::new))) {
            ChannelMatch match = Checker.match(sensor, capture, Map.of());
            Map<String, ChannelPlan> plans = Checker.plans(sensor, match, Map.of());
            try (CaptureMeasurement measurement = CaptureMeasurer.withInstalled()
                    .measure(
                            capture,
                            plans,
                            PulseSettings.defaults(),
                            CaptureMeasurer.DEFAULT_TIME_BASE_PPM,
                            Progress.NONE)) {
                return Checker.check(measurement, sensor, match, settings, Progress.NONE);
            }
        }
    }
}
