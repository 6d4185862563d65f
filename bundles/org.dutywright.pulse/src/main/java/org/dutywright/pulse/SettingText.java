// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;
import org.dutywright.pulse.PulseSettings.Setting;
import org.dutywright.units.Quantity;
import org.dutywright.units.Unit;
import org.dutywright.units.UnitException;

/** The values of settings as people write and read them. */
public final class SettingText {
    private static final Pattern NUMBER = Pattern.compile("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d{1,3})?");

    private SettingText() {}

    /** A value with the unit of its setting: "10 %". */
    public static String of(Setting setting, double value) {
        String number = number(value);
        return setting.unit().isEmpty() ? number : number + " " + setting.unit();
    }

    /** A value without its unit, in full and without an exponent. */
    public static String number(double value) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        return value == 0
                ? "0"
                : new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    }

    /**
     * Reads a value: a number in the unit of the setting, or a number with a unit of the same dimension ("500 mV").
     *
     * @throws IllegalArgumentException if it is no such thing or outside the range of the setting; the message says what to
     *     write
     */
    public static double parse(Setting setting, String text) {
        double value = read(setting, text.strip());
        if (!setting.allows(value)) {
            throw new IllegalArgumentException(setting.id() + " must lie between " + of(setting, setting.min())
                    + " and " + of(setting, setting.max()) + ", not " + of(setting, value));
        }
        return value;
    }

    private static double read(Setting setting, String text) {
        String unit = setting.unit();
        Optional<Unit> known = Unit.ofSymbol(unit);
        boolean literal = known.isEmpty() && !unit.isEmpty() && text.endsWith(unit);
        String bare = literal ? text.substring(0, text.length() - unit.length()).strip() : text;
        if (NUMBER.matcher(bare).matches() && Double.isFinite(Double.parseDouble(bare))) {
            return Double.parseDouble(bare);
        }
        try {
            if (known.isPresent()) {
                return Quantity.parse(text, known.get().dimension()).value();
            }
        } catch (UnitException e) {
            throw new IllegalArgumentException(setting.id() + ": " + e.getMessage(), e);
        }
        throw new IllegalArgumentException(setting.id() + ": '" + text + "' is no "
                + (unit.isEmpty() ? "plain number" : "number of " + unit) + "; write for example "
                + of(setting, setting.defaultValue()));
    }
}
