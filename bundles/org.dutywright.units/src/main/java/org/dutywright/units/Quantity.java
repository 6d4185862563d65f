// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number with a unit.
 *
 * @param value in {@code unit}
 * @param unit without prefix
 */
public record Quantity(double value, Unit unit) {
    private static final Pattern TEXT =
            Pattern.compile("\\s*([-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d{1,3})?)(\\s*)(\\S.*?)?\\s*");

    /**
     * Reads a number, a space and a unit, and converts to the unit without prefix.
     *
     * @throws UnitException if the text is no such thing
     */
    public static Quantity parse(String text) throws UnitException {
        Matcher matcher = TEXT.matcher(text);
        if (!matcher.matches()) {
            throw new UnitException("'" + text.strip() + "' is not a number with a unit; write for example "
                    + Dimension.VOLTAGE.example());
        }
        String unitText = matcher.group(3);
        if (unitText == null) {
            throw new UnitException("'" + text.strip() + "' has no unit; write for example " + matcher.group(1) + " V");
        }
        Optional<ScaledUnit> scaled = ScaledUnit.parse(unitText);
        if (scaled.isEmpty()) {
            throw new UnitException("'" + unitText + "' is not a known unit; write for example " + matcher.group(1)
                    + " V, " + matcher.group(1) + " us or " + matcher.group(1) + " Hz");
        }
        double value = scale(matcher.group(1), scaled.get().factor());
        if (!Double.isFinite(value)) {
            throw new UnitException("'" + text.strip() + "' is too large");
        }
        return new Quantity(value, scaled.get().unit());
    }

    /**
     * Reads a quantity of one dimension.
     *
     * @throws UnitException if the text is no quantity or one of another dimension
     */
    public static Quantity parse(String text, Dimension wanted) throws UnitException {
        Matcher matcher = TEXT.matcher(text);
        if (matcher.matches()) {
            String unitText = matcher.group(3);
            String advice = "; write for example " + wanted.example();
            if (unitText == null) {
                throw new UnitException("'" + text.strip() + "' has no unit of " + wanted.word() + advice);
            }
            if (ScaledUnit.parse(unitText).isEmpty()) {
                throw new UnitException("'" + unitText + "' is not a unit of " + wanted.word() + advice);
            }
        }
        Quantity quantity = parse(text);
        if (quantity.unit.dimension() != wanted) {
            throw new UnitException("'" + text.strip() + "' is a "
                    + quantity.unit.dimension().word() + ", not a " + wanted.word() + "; write for example "
                    + wanted.example());
        }
        return quantity;
    }

    // dividing by an exact power of ten keeps "100 us" the double nearest to 1e-4
    private static double scale(String number, double factor) {
        double plain = Double.parseDouble(number);
        return factor < 1 ? plain / Math.rint(1 / factor) : plain * factor;
    }
}
