// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.math.BigDecimal;
import java.util.Locale;
import org.dutywright.units.UnitPrinter;

/** Numbers in sentences. */
public final class Say {
    private Say() {}

    /**
     * A value with its unit to four significant digits.
     *
     * @param value in the base unit
     * @param unit symbol of the base unit, empty for a plain number
     */
    public static String amount(double value, String unit) {
        return UnitPrinter.print(value, unit, 4);
    }

    /** An instant in the capture's time, to the microsecond. */
    public static String instant(double seconds) {
        return new BigDecimal(String.format(Locale.ROOT, "%.6f", seconds))
                        .stripTrailingZeros()
                        .toPlainString() + " s";
    }
}
