// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import static org.dutywright.sensor.LimitText.toOptionalDouble;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.sensor.Sensor.Duty;
import org.dutywright.sensor.Sensor.Input;
import org.dutywright.sensor.Sensor.SensorChannel;
import org.dutywright.text.MapReader;
import org.dutywright.text.ScalarParser;
import org.dutywright.units.Dimension;

/** Reads one entry of {@code channels}. */
final class ChannelText {
    private static final List<String> ACTIVE = List.of("high", "low");

    private ChannelText() {}

    static SensorChannel read(MapReader map) {
        Optional<String> name = map.required("name", SensorText.identifier());
        Optional<String> active = map.optional("active", ScalarParser.word(ACTIVE));
        SensorChannel channel = new SensorChannel(
                name.orElse(""),
                !active.equals(Optional.of("low")),
                LimitText.range(map, "frequency", Dimension.FREQUENCY),
                LimitText.range(map, "lowLevel", Dimension.VOLTAGE),
                LimitText.range(map, "highLevel", Dimension.VOLTAGE),
                map.child("input").flatMap(ChannelText::readInput),
                map.child("duty").flatMap(ChannelText::readDuty),
                toOptionalDouble(map.child("transition").flatMap(ChannelText::readTransition)));
        map.finish();
        return channel;
    }

    private static Optional<Double> readTransition(MapReader map) {
        Optional<Double> max = map.required("max", QuantityScalars.positive(Dimension.TIME));
        map.finish();
        return max;
    }

    private static Optional<Input> readInput(MapReader map) {
        Optional<Double> rising = map.required("rising", QuantityScalars.of(Dimension.VOLTAGE));
        Optional<Double> falling = map.required("falling", QuantityScalars.of(Dimension.VOLTAGE));
        map.finish();
        if (rising.isEmpty() || falling.isEmpty()) {
            return Optional.empty();
        }
        if (rising.get() < falling.get()) {
            map.problemAt("rising", "'rising' is below 'falling'; an input switches up at the higher voltage");
        }
        return Optional.of(new Input(rising.get(), falling.get()));
    }

    private static Optional<Duty> readDuty(MapReader map) {
        Optional<Double> released = map.required("released", QuantityScalars.share());
        Optional<Double> pressed = map.required("pressed", QuantityScalars.share());
        OptionalDouble tolerance =
                toOptionalDouble(map.optional("tolerance", QuantityScalars.notNegative(Dimension.SHARE)));
        Optional<MapReader> valid = map.child("valid");
        OptionalDouble validMin = toOptionalDouble(valid.flatMap(v -> v.optional("min", QuantityScalars.share())));
        OptionalDouble validMax = toOptionalDouble(valid.flatMap(v -> v.optional("max", QuantityScalars.share())));
        valid.ifPresent(MapReader::finish);
        map.finish();
        if (released.isEmpty() || pressed.isEmpty()) {
            return Optional.empty();
        }
        Duty duty = new Duty(released.get(), pressed.get(), tolerance, validMin, validMax);
        checkDuty(map, duty);
        return Optional.of(duty);
    }

    private static void checkDuty(MapReader map, Duty duty) {
        if (duty.releasedPercent() == duty.pressedPercent()) {
            map.problemAt("pressed", "'released' and 'pressed' are equal, so the duty could not tell the position");
        }
        double min = duty.validMinPercent().orElse(0);
        double max = duty.validMaxPercent().orElse(100);
        if (min >= max) {
            map.problemAt("valid", "'min' must be below 'max' in 'valid'");
            return;
        }
        checkEnd(map, "released", duty.releasedPercent(), min, max);
        checkEnd(map, "pressed", duty.pressedPercent(), min, max);
    }

    private static void checkEnd(MapReader map, String key, double percent, double min, double max) {
        if (percent < min || percent > max) {
            map.problemAt(key, "'" + key + "' lies outside the band of 'valid'; no reading there could pass");
        }
    }
}
