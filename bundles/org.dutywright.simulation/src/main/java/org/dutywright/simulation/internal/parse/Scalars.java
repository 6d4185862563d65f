// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.parse;

import org.dutywright.sensor.QuantityScalars;
import org.dutywright.text.BadValueException;
import org.dutywright.text.ScalarParser;
import org.dutywright.units.Dimension;

/** The kinds of single values of a scenario text. */
final class Scalars {

    private Scalars() {}

    static ScalarParser<Double> seconds() {
        return QuantityScalars.of(Dimension.TIME);
    }

    static ScalarParser<Double> volts() {
        return QuantityScalars.of(Dimension.VOLTAGE);
    }

    static ScalarParser<Double> hertz() {
        return QuantityScalars.of(Dimension.FREQUENCY);
    }

    static ScalarParser<Double> percent() {
        return QuantityScalars.of(Dimension.SHARE);
    }

    /** Only values above zero. */
    static ScalarParser<Double> positive(ScalarParser<Double> parser) {
        return text -> {
            double value = parser.parse(text);
            if (value <= 0) {
                throw new BadValueException("'" + text.strip() + "' must be above 0");
            }
            return value;
        };
    }

    /** Only zero and above. */
    static ScalarParser<Double> notNegative(ScalarParser<Double> parser) {
        return text -> {
            double value = parser.parse(text);
            if (value < 0) {
                throw new BadValueException("'" + text.strip() + "' must not be below 0");
            }
            return value;
        };
    }

    /** Percentages from {@code min} to {@code max}. */
    static ScalarParser<Double> percent(double min, double max) {
        return text -> {
            double value = percent().parse(text);
            if (value < min || value > max) {
                throw new BadValueException(
                        "'" + text.strip() + "' must lie in " + (long) min + " % to " + (long) max + " %");
            }
            return value;
        };
    }

    /** Letters, digits, dots and dashes. */
    static ScalarParser<String> id() {
        return text -> {
            if (!text.strip().matches("[A-Za-z0-9.-]+")) {
                throw new BadValueException("'" + text.strip() + "' may have letters, digits, dots and dashes only");
            }
            return text.strip();
        };
    }

    /** A heading of a column. */
    static ScalarParser<String> channelName() {
        return text -> {
            if (!text.strip().matches("[\\p{L}\\p{N}_.-]{1,64}")) {
                throw new BadValueException(
                        "'" + text.strip() + "' may have letters, digits, underscores, dots and dashes only");
            }
            return text.strip();
        };
    }
}
