// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.Agreement;
import org.dutywright.sensor.Sensor.Decision;
import org.dutywright.sensor.Sensor.Duty;
import org.dutywright.sensor.Sensor.EventRule;
import org.dutywright.sensor.Sensor.Limit;
import org.dutywright.sensor.Sensor.Origin;
import org.dutywright.sensor.Sensor.Quantity;
import org.dutywright.sensor.Sensor.Range;
import org.dutywright.sensor.Sensor.SensorChannel;

/** Invented sensors for tests. */
final class Sensors {
    private Sensors() {}

    /** A twin-channel sensor at 200 Hz without limits relative to the supply. */
    static Sensor twin() {
        return sensor(List.of(signal1(), signal2()), Map.of(), new Decision(Decision.Rule.THREE_WAY, 2));
    }

    static Sensor twin(Decision decision) {
        return sensor(List.of(signal1(), signal2()), Map.of(), decision);
    }

    static Sensor twin(Map<String, EventRule> events) {
        return sensor(List.of(signal1(), signal2()), events, new Decision(Decision.Rule.THREE_WAY, 2));
    }

    static Sensor of(SensorChannel... channels) {
        return sensor(List.of(channels), Map.of(), new Decision(Decision.Rule.THREE_WAY, 2));
    }

    static Sensor sensor(List<SensorChannel> channels, Map<String, EventRule> events, Decision decision) {
        return new Sensor(
                "test-twin-200",
                "Twin-channel sensor, invented",
                new Origin("Test data, invented", "1", "2026-11-25"),
                new Quantity("pedal travel", "%", 0, 100),
                Optional.of(between(9, 32)),
                channels,
                Optional.of(agreement()),
                events,
                decision);
    }

    static Agreement agreement() {
        return new Agreement(4, OptionalDouble.of(8), OptionalDouble.of(50), 0.2);
    }

    static SensorChannel signal1() {
        return new SensorChannel(
                "signal1",
                true,
                Optional.of(between(180, 220)),
                Optional.of(atMost(1)),
                Optional.of(between(9, 16)),
                Optional.empty(),
                Optional.of(duty(10, 45, 2)),
                OptionalDouble.of(100e-6));
    }

    static SensorChannel signal2() {
        return new SensorChannel(
                "signal2",
                false,
                Optional.of(between(180, 220)),
                Optional.of(atMost(1)),
                Optional.of(between(9, 16)),
                Optional.empty(),
                Optional.of(duty(20, 90, 3)),
                OptionalDouble.of(100e-6));
    }

    /** A channel without any limit. */
    static SensorChannel bare(String name) {
        return new SensorChannel(
                name,
                true,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty());
    }

    static Duty duty(double released, double pressed, double tolerance) {
        return new Duty(released, pressed, OptionalDouble.of(tolerance), OptionalDouble.of(5), OptionalDouble.of(95));
    }

    static Range between(double min, double max) {
        return new Range(Optional.of(new Limit(min, false)), Optional.of(new Limit(max, false)));
    }

    static Range atMost(double max) {
        return new Range(Optional.empty(), Optional.of(new Limit(max, false)));
    }

    static Range supplyShare(double minPercent, double maxVolts) {
        return new Range(Optional.of(new Limit(minPercent, true)), Optional.of(new Limit(maxVolts, false)));
    }
}
