// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Sentences with numbers, written the same in every country. */
public final class Words {
    private Words() {}

    /** Formats with a decimal point. */
    // the annotation that the checker asks for would take a library of its own
    @SuppressWarnings("AnnotateFormatMethod")
    public static String of(String format, Object... arguments) {
        return String.format(Locale.ROOT, format, arguments);
    }

    /** A time with a prefix that suits it: "4.98 ms". */
    public static String seconds(double seconds) {
        return prefixed(seconds, "s");
    }

    /** A sample rate with a prefix that suits it: "20 kHz". */
    public static String rate(double hertz) {
        if (hertz >= 1e6) {
            return round(hertz / 1e6) + " MHz";
        }
        return hertz >= 1e3 ? round(hertz / 1e3) + " kHz" : round(hertz) + " Hz";
    }

    // rates are set in round numbers, which look wrong with digits behind them
    private static String round(double value) {
        return new BigDecimal(value)
                .round(new MathContext(5))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** A number of four digits with a prefix that suits it. */
    public static String prefixed(double value, String unit) {
        double size = Math.abs(value);
        if (size == 0 || size >= 1) {
            return digits(value) + " " + unit;
        }
        if (size >= 1e-3) {
            return digits(value * 1e3) + " m" + unit;
        }
        return size >= 1e-6 ? digits(value * 1e6) + " µ" + unit : digits(value * 1e9) + " n" + unit;
    }

    private static String digits(double value) {
        return of("%.4g", value);
    }
}
