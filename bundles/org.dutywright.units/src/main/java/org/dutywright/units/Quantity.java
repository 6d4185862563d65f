// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

import java.math.BigDecimal;
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
    // of a stripped text; no part can match what its neighbour matches, so that the time is linear in the length
    private static final Pattern TEXT =
            Pattern.compile("([-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d{1,3})?)\\s*(\\S.*)?", Pattern.DOTALL);

    private static final Pattern DECIMAL_COMMA = Pattern.compile("[-+]?\\d+,\\d+(\\s.*)?", Pattern.DOTALL);

    /**
     * Reads a number, a space and a unit, and converts to the unit without prefix. The value is the double nearest to
     * what is written: "100 us" is 1e-4.
     *
     * @throws UnitException if the text is no such thing
     */
    public static Quantity parse(String text) throws UnitException {
        return read(text, Optional.empty());
    }

    /**
     * Reads a quantity of one dimension.
     *
     * @throws UnitException if the text is no quantity or one of another dimension
     */
    public static Quantity parse(String text, Dimension wanted) throws UnitException {
        Quantity quantity = read(text, Optional.of(wanted));
        if (quantity.unit.dimension() != wanted) {
            throw new UnitException("'" + text.strip() + "' is a "
                    + quantity.unit.dimension().word() + ", not a " + wanted.word() + "; write for example "
                    + wanted.example());
        }
        return quantity;
    }

    private static Quantity read(String given, Optional<Dimension> wanted) throws UnitException {
        String text = given.strip();
        String unitWord = wanted.map(dimension -> "unit of " + dimension.word()).orElse("unit");
        String advice =
                "; write for example " + wanted.orElse(Dimension.VOLTAGE).example();
        Matcher matcher = TEXT.matcher(text);
        boolean comma = DECIMAL_COMMA.matcher(text).matches();
        if (comma || !matcher.matches()) {
            throw new UnitException("'" + text + "' is not a number with a " + unitWord
                    + (comma ? "; the decimal mark is a point" : "") + advice);
        }
        String unitText = matcher.group(2);
        if (unitText == null) {
            throw new UnitException("'" + text + "' has no " + unitWord + advice);
        }
        Optional<ScaledUnit> scaled = ScaledUnit.parse(unitText);
        if (scaled.isEmpty()) {
            throw new UnitException(
                    "'" + unitText + "' is not a " + (wanted.isPresent() ? "" : "known ") + unitWord + advice);
        }
        double value = scale(matcher.group(1), scaled.get().factor());
        if (!Double.isFinite(value)) {
            throw new UnitException("'" + text + "' is too large");
        }
        return new Quantity(value, scaled.get().unit());
    }

    // in decimal, so that one rounding only lies between the text and the double
    private static double scale(String number, double factor) {
        double value = new BigDecimal(number)
                .multiply(new BigDecimal(Double.toString(factor)))
                .doubleValue();
        return value == 0 ? 0 : value;
    }
}
