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
    private static final Pattern OF_SUPPLY = Pattern.compile("(\\S+\\s*%)\\s*of\\s+supply");

    private LimitText() {}

    /** The range of a quantity that is never below 0; a range without any limit is reported. */
    static Optional<Range> range(MapReader map, String key, Dimension dimension) {
        return read(map, key, dimension.example(), absolute(QuantityScalars.notNegative(dimension)));
    }

    /** The range of a voltage level, each limit absolute or a part of the supply. */
    static Optional<Range> levelRange(MapReader map, String key) {
        return read(map, key, Dimension.VOLTAGE.example(), level());
    }

    private static Optional<Range> read(MapReader map, String key, String example, ScalarParser<Limit> limit) {
        Optional<MapReader> child = map.child(key, "{max: " + example + "}");
        if (child.isEmpty()) {
            return Optional.empty();
        }
        MapReader range = child.get();
        Optional<Limit> min = range.optional("min", limit);
        Optional<Limit> max = range.optional("max", limit);
        range.finish();
        if (min.isPresent() && max.isPresent() && areReversed(min.get(), max.get())) {
            range.problemAt("min", "'min' is above 'max' in '" + key + "'; exchange the two");
        }
        if (!range.has("min") && !range.has("max")) {
            range.problemAt("min", "'" + key + "' needs min, max or both; write for example {max: " + example + "}");
        }
        return min.isEmpty() && max.isEmpty() ? Optional.empty() : Optional.of(new Range(min, max));
    }

    // an absolute limit and one of the supply can only be compared once the supply is known
    private static boolean areReversed(Limit min, Limit max) {
        return min.percentOfSupply() == max.percentOfSupply() && min.value() > max.value();
    }

    private static ScalarParser<Limit> absolute(ScalarParser<Double> parser) {
        return text -> new Limit(parser.parse(text), false);
    }

    private static ScalarParser<Limit> level() {
        return text -> {
            Matcher matcher = OF_SUPPLY.matcher(text.strip());
            if (matcher.matches()) {
                return new Limit(QuantityScalars.notNegative(Dimension.SHARE).parse(matcher.group(1)), true);
            }
            if (text.contains("%")) {
                throw new BadValueException(
                        "'" + text.strip() + "' is no voltage; write for example 9 V or 75 % of supply");
            }
            return new Limit(QuantityScalars.of(Dimension.VOLTAGE).parse(text), false);
        };
    }

    static OptionalDouble toOptionalDouble(Optional<Double> value) {
        return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
    }
}
