// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Uncertain;
import org.dutywright.units.UnitPrinter;

/** How numbers look in texts for people. */
public final class Show {
    private static final int DIGITS = 5;
    private static final int SPREAD_DIGITS = 3;
    private static final int EXACT_DIGITS = 9;
    private static final Pattern ZEROS = Pattern.compile("(\\d)\\.?0+(?= |$)");
    private static final Pattern FRACTION = Pattern.compile("\\d\\.\\d");

    private Show() {}

    /** A measured value. */
    public static String value(double value, String unit) {
        return UnitPrinter.print(value, unit, DIGITS);
    }

    /** A measured value with its standard uncertainty. */
    public static String value(double value, double u, String unit) {
        return UnitPrinter.print(value, u, unit);
    }

    /** A measured value with its standard uncertainty. */
    public static String value(Uncertain value, String unit) {
        return value(value.value(), value.u(), unit);
    }

    /** The component that makes most of an uncertainty: "u mostly from the clock"; empty without a budget. */
    public static String mostly(Budget budget) {
        return budget.dominant().map(it -> "u mostly from " + it.name()).orElse("");
    }

    /** A standard deviation or another measure of spread, of which few digits mean anything. */
    public static String spread(double value, String unit) {
        return UnitPrinter.print(value, unit, SPREAD_DIGITS);
    }

    /** A number that somebody wrote down: without zeros at its end. */
    public static String exact(double value, String unit) {
        if (unit.isEmpty()) {
            return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
        }
        String text = UnitPrinter.print(value, unit, EXACT_DIGITS);
        return FRACTION.matcher(text).find() ? ZEROS.matcher(text).replaceFirst("$1") : text;
    }

    /** An instant of the recording, in seconds to the microsecond. */
    public static String instant(double seconds) {
        return String.format(Locale.ROOT, "%.6f s", seconds);
    }

    /** "180 Hz to 220 Hz", "at most 13 µs", "at least 9 V"; empty without limits. */
    public static String limits(OptionalDouble lower, OptionalDouble upper, String unit) {
        if (lower.isPresent() && upper.isPresent()) {
            return exact(lower.getAsDouble(), unit) + " to " + exact(upper.getAsDouble(), unit);
        }
        if (upper.isPresent()) {
            return "at most " + exact(upper.getAsDouble(), unit);
        }
        return lower.isPresent() ? "at least " + exact(lower.getAsDouble(), unit) : "";
    }

    /** A measured value that may be absent, with its uncertainty where there is one. */
    public static Optional<String> measured(OptionalDouble measured, OptionalDouble u, String unit) {
        if (measured.isEmpty()) {
            return Optional.empty();
        }
        double value = measured.getAsDouble();
        if (u.isPresent()) {
            return Optional.of(value(value, u.getAsDouble(), unit));
        }
        return Optional.of(unit.isEmpty() ? exact(value, unit) : value(value, unit));
    }

    /** "1 cycle", "2 cycles", "12,345 cycles". */
    public static String count(long count, String noun) {
        return String.format(Locale.ROOT, "%,d %s%s", count, noun, count == 1 ? "" : "s");
    }
}
