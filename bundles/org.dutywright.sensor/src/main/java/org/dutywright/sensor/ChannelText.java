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
        Optional<String> name = map.required("name", ScalarParser.line(), "signal1");
        Optional<String> active = map.optional("active", ScalarParser.word(ACTIVE));
        SensorChannel channel = new SensorChannel(
                name.orElse(""),
                !active.equals(Optional.of("low")),
                LimitText.range(map, "frequency", Dimension.FREQUENCY),
                LimitText.levelRange(map, "lowLevel"),
                LimitText.levelRange(map, "highLevel"),
                map.child("input", "{rising: 3.5 V, falling: 1.5 V}").flatMap(ChannelText::readInput),
                map.child("duty", "{released: 10 %, pressed: 90 %}").flatMap(ChannelText::readDuty),
                toOptionalDouble(map.child("transition", "{max: 100 us}").flatMap(ChannelText::readTransition)));
        map.finish();
        return channel;
    }

    private static Optional<Double> readTransition(MapReader map) {
        Optional<Double> max = map.required("max", QuantityScalars.positive(Dimension.TIME), "100 us");
        map.finish();
        return max;
    }

    private static Optional<Input> readInput(MapReader map) {
        Optional<Double> rising = map.required("rising", QuantityScalars.of(Dimension.VOLTAGE), "3.5 V");
        Optional<Double> falling = map.required("falling", QuantityScalars.of(Dimension.VOLTAGE), "1.5 V");
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
        Optional<Double> released = map.required("released", QuantityScalars.share(), "10 %");
        Optional<Double> pressed = map.required("pressed", QuantityScalars.share(), "90 %");
        OptionalDouble tolerance =
                toOptionalDouble(map.optional("tolerance", QuantityScalars.notNegative(Dimension.SHARE)));
        Valid valid = map.child("valid", "{min: 5 %, max: 95 %}")
                .map(ChannelText::readValid)
                .orElse(Valid.EVERYTHING);
        map.finish();
        released.ifPresent(percent -> checkEnd(map, "released", percent, valid));
        pressed.ifPresent(percent -> checkEnd(map, "pressed", percent, valid));
        if (released.isEmpty() || pressed.isEmpty()) {
            return Optional.empty();
        }
        if (released.equals(pressed)) {
            map.problemAt(
                    "pressed",
                    "'released' and 'pressed' are equal, so the duty could not tell the position;"
                            + " write two different duties");
        }
        return Optional.of(new Duty(released.get(), pressed.get(), tolerance, valid.minPercent, valid.maxPercent));
    }

    private record Valid(OptionalDouble minPercent, OptionalDouble maxPercent) {
        static final Valid EVERYTHING = new Valid(OptionalDouble.empty(), OptionalDouble.empty());

        boolean isEmpty() {
            return minPercent.orElse(0) >= maxPercent.orElse(100);
        }

        boolean contains(double percent) {
            return percent >= minPercent.orElse(0) && percent <= maxPercent.orElse(100);
        }
    }

    private static Valid readValid(MapReader map) {
        Valid valid = new Valid(
                toOptionalDouble(map.optional("min", QuantityScalars.share())),
                toOptionalDouble(map.optional("max", QuantityScalars.share())));
        map.finish();
        if (!map.has("min") && !map.has("max")) {
            map.problemAt("min", "'valid' needs min, max or both; write for example {min: 5 %, max: 95 %}");
        }
        if (valid.isEmpty()) {
            map.problemAt(map.has("min") ? "min" : "max", "'min' must be below 'max' in 'valid'");
        }
        return valid;
    }

    // of a band that holds nothing that much has been said already
    private static void checkEnd(MapReader map, String key, double percent, Valid valid) {
        if (!valid.isEmpty() && !valid.contains(percent)) {
            map.problemAt(
                    key, "'" + key + "' lies outside the band of 'valid'; no reading there could pass, widen the band");
        }
    }
}
