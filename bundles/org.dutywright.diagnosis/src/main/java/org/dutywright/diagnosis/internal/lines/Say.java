// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Numbers in sentences. */
public final class Say {
    private Say() {}

    /**
     * A value with its unit to four significant digits, times below a second in milliseconds or microseconds.
     *
     * @param value in the base unit
     * @param unit symbol of the base unit, empty for a plain number
     */
    public static String amount(double value, String unit) {
        if (unit.equals("s") && Math.abs(value) < 1e-3) {
            return digits(value * 1e6) + " µs";
        }
        if (unit.equals("s") && Math.abs(value) < 1) {
            return digits(value * 1e3) + " ms";
        }
        return unit.isEmpty() ? digits(value) : digits(value) + " " + unit;
    }

    /** An instant in the capture's time, to the microsecond. */
    public static String instant(double seconds) {
        return new BigDecimal(String.format(Locale.ROOT, "%.6f", seconds))
                        .stripTrailingZeros()
                        .toPlainString() + " s";
    }

    private static String digits(double value) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(4)).stripTrailingZeros();
        return rounded.toPlainString();
    }
}
