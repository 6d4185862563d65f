// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import org.dutywright.text.BadValueException;
import org.dutywright.text.ScalarParser;
import org.dutywright.units.Dimension;
import org.dutywright.units.Quantity;
import org.dutywright.units.UnitException;

/** Reads quantities where a text has single values. */
public final class QuantityScalars {
    private QuantityScalars() {}

    /** A quantity of one dimension, in base units. */
    public static ScalarParser<Double> of(Dimension dimension) {
        return text -> {
            try {
                return Quantity.parse(text, dimension).value();
            } catch (UnitException e) {
                throw new BadValueException(e.getMessage());
            }
        };
    }

    /** A quantity of one dimension that is above 0, in base units. */
    public static ScalarParser<Double> positive(Dimension dimension) {
        return checked(dimension, value -> value > 0, "must be above 0");
    }

    /** A quantity of one dimension that is not below 0, in base units. */
    public static ScalarParser<Double> notNegative(Dimension dimension) {
        return checked(dimension, value -> value >= 0, "must not be below 0");
    }

    /** A share from 0 to 100 %. */
    public static ScalarParser<Double> share() {
        return checked(Dimension.SHARE, value -> value >= 0 && value <= 100, "must lie between 0 % and 100 %");
    }

    private static ScalarParser<Double> checked(
            Dimension dimension, java.util.function.DoublePredicate allowed, String rule) {
        return text -> {
            double value = of(dimension).parse(text);
            if (!allowed.test(value)) {
                throw new BadValueException("'" + text.strip() + "' " + rule);
            }
            return value;
        };
    }
}
