// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.sensor.Sensor.Limit;
import org.dutywright.sensor.Sensor.Range;
import org.dutywright.text.BadValueException;
import org.dutywright.text.MapReader;
import org.dutywright.text.ScalarParser;
import org.dutywright.units.Dimension;

/** Reads limits: {@code {min: 180 Hz, max: 220 Hz}}, and volts as {@code 75 % of supply}. */
final class LimitText {
    private static final Pattern OF_SUPPLY = Pattern.compile("\\s*(\\S+\\s*%)\\s*of\\s+supply\\s*");

    private LimitText() {}

    /** The range below a key of {@code map}; a range without any limit is reported. */
    static Optional<Range> range(MapReader map, String key, Dimension dimension) {
        Optional<MapReader> child = map.child(key);
        if (child.isEmpty()) {
            return Optional.empty();
        }
        MapReader range = child.get();
        Optional<Limit> min = range.optional("min", limit(dimension));
        Optional<Limit> max = range.optional("max", limit(dimension));
        range.finish();
        if (min.isPresent() && max.isPresent() && areReversed(min.get(), max.get())) {
            range.problemAt("min", "'min' is above 'max' in '" + key + "'; exchange the two");
        }
        if (!range.has("min") && !range.has("max")) {
            range.problemAt(
                    "min",
                    "'" + key + "' needs min, max or both; write for example {max: " + dimension.example() + "}");
        }
        return min.isEmpty() && max.isEmpty() ? Optional.empty() : Optional.of(new Range(min, max));
    }

    // an absolute limit and one of the supply can only be compared once the supply is known
    private static boolean areReversed(Limit min, Limit max) {
        return min.percentOfSupply() == max.percentOfSupply() && min.value() > max.value();
    }

    private static ScalarParser<Limit> limit(Dimension dimension) {
        return text -> {
            Matcher matcher = OF_SUPPLY.matcher(text);
            if (!matcher.matches()) {
                return new Limit(QuantityScalars.of(dimension).parse(text), false);
            }
            if (dimension != Dimension.VOLTAGE) {
                throw new BadValueException(
                        "only a voltage can be a part of the supply; write for example " + dimension.example());
            }
            return new Limit(QuantityScalars.notNegative(Dimension.SHARE).parse(matcher.group(1)), true);
        };
    }

    static OptionalDouble toOptionalDouble(Optional<Double> value) {
        return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
    }
}
