// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;

/** Prints quantities for people, always with a point as decimal mark and never with an exponent. */
public final class UnitPrinter {
    private static final int UNCERTAINTY_DIGITS = 2;

    /** What is smaller than this is left over from rounding in a calculation: a thousandth of the smallest prefix. */
    private static final double LEAST_PREFIXED = 1e-15;

    /** The same for units without prefixes. */
    private static final double LEAST_PLAIN = 1e-9;

    private UnitPrinter() {}

    /**
     * Prints a value with an SI prefix, so that one to three digits stand before the point; seconds have
     * prefixes below 1 s only. What is so small that only rounding can have made it is printed as 0.
     *
     * @param value finite, in {@code unitSymbol}
     * @param unitSymbol without prefix, may be empty
     * @param significantDigits at least 1; digits before the point are never dropped
     * @throws IllegalArgumentException if the value is not finite
     */
    public static String print(double value, String unitSymbol, int significantDigits) {
        double shown = Math.abs(value) < least(unitSymbol) ? 0 : value;
        BigDecimal rounded = exact(shown).round(new MathContext(significantDigits, RoundingMode.HALF_EVEN));
        Prefix prefix = prefixFor(rounded, unitSymbol);
        BigDecimal scaled = rounded.scaleByPowerOfTen(-prefix.exponent());
        int decimals = Math.max(0, significantDigits - 1 - magnitude(scaled));
        return withUnit(plain(scaled, scaled.signum() == 0 ? 0 : decimals), prefix, unitSymbol);
    }

    /**
     * Prints a value and its standard uncertainty, both to two significant digits of the uncertainty and with one
     * prefix: {@code 200.003 ± 0.012 Hz}.
     *
     * @param u at least 0; where it is too small to be printed, the value comes with six digits and
     *     without uncertainty
     * @throws IllegalArgumentException if a number is not finite or {@code u} is negative
     */
    public static String print(double value, double u, String unitSymbol) {
        if (!(u >= 0)) {
            throw new IllegalArgumentException("uncertainty " + u);
        }
        if (u < least(unitSymbol)) {
            return print(value, unitSymbol, 6);
        }
        BigDecimal roundedU = exact(u).round(new MathContext(UNCERTAINTY_DIGITS, RoundingMode.HALF_EVEN));
        int place = magnitude(roundedU) - UNCERTAINTY_DIGITS + 1;
        BigDecimal roundedValue = exact(value).setScale(-place, RoundingMode.HALF_EVEN);
        BigDecimal larger = roundedValue.abs().max(roundedU);
        Prefix prefix = prefixFor(larger, unitSymbol);
        int decimals = Math.max(0, prefix.exponent() - place);
        String first = plain(roundedValue.scaleByPowerOfTen(-prefix.exponent()), decimals);
        String second = plain(roundedU.scaleByPowerOfTen(-prefix.exponent()), decimals);
        return withUnit(first + " ± " + second, prefix, unitSymbol);
    }

    private static double least(String unitSymbol) {
        return Unit.ofSymbol(unitSymbol).filter(Unit::takesPrefix).isPresent() ? LEAST_PREFIXED : LEAST_PLAIN;
    }

    private static BigDecimal exact(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("not a finite number: " + value);
        }
        return new BigDecimal(Double.toString(value));
    }

    // exponent of the first significant digit
    private static int magnitude(BigDecimal value) {
        return value.signum() == 0 ? 0 : value.precision() - value.scale() - 1;
    }

    private static Prefix prefixFor(BigDecimal value, String unitSymbol) {
        Optional<Unit> unit = Unit.ofSymbol(unitSymbol);
        if (value.signum() == 0 || unit.isEmpty() || !unit.get().takesPrefix()) {
            return Prefix.NONE;
        }
        int magnitude = magnitude(value);
        // nobody reads kiloseconds
        if (unit.get() == Unit.SECOND && magnitude >= 0) {
            return Prefix.NONE;
        }
        for (Prefix prefix : Prefix.values()) {
            if (magnitude >= prefix.exponent()) {
                return prefix;
            }
        }
        return Prefix.PICO;
    }

    private static String plain(BigDecimal value, int decimals) {
        BigDecimal rounded = value.setScale(decimals, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
    }

    private static String withUnit(String number, Prefix prefix, String unitSymbol) {
        return unitSymbol.isEmpty() ? number : number + " " + prefix.symbol() + unitSymbol;
    }
}
