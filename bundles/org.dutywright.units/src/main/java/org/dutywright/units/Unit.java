// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The units that captures, sensor texts and reports use, without prefix. */
public enum Unit {
    VOLT("V", Dimension.VOLTAGE, true, "v", "volt", "volts"),
    AMPERE("A", Dimension.CURRENT, true, "ampere", "amperes", "amp", "amps"),
    OHM("Ω", Dimension.RESISTANCE, true, "\u2126", "\u03c9", "ohm", "ohms"),
    FARAD("F", Dimension.CAPACITANCE, true, "farad", "farads"),
    SECOND("s", Dimension.TIME, true, "second", "seconds", "sec", "secs"),
    HERTZ("Hz", Dimension.FREQUENCY, true, "hz", "hertz"),
    PERCENT("%", Dimension.SHARE, false, "percent"),
    PERCENT_PER_SECOND("%/s", Dimension.SHARE_RATE, false, "percent/s", "percent per second"),
    CELSIUS("°C", Dimension.TEMPERATURE, false, "degc", "celsius"),
    METRE("m", Dimension.LENGTH, true, "metre", "metres", "meter", "meters"),
    DEGREE("°", Dimension.ANGLE, false, "deg", "degree", "degrees");

    private final String symbol;
    private final Dimension dimension;
    private final boolean prefixed;
    // unmodifiable, which the type does not say
    @SuppressWarnings("ImmutableEnumChecker")
    private final List<String> names;

    Unit(String symbol, Dimension dimension, boolean prefixed, String... names) {
        this.symbol = symbol;
        this.dimension = dimension;
        this.prefixed = prefixed;
        this.names = List.of(names);
    }

    /** The symbol, as printed. */
    public String symbol() {
        return symbol;
    }

    /** What it measures. */
    public Dimension dimension() {
        return dimension;
    }

    /** Whether SI prefixes go with it. */
    public boolean takesPrefix() {
        return prefixed;
    }

    /** The unit that prints this symbol. */
    public static Optional<Unit> ofSymbol(String symbol) {
        for (Unit unit : values()) {
            if (unit.symbol.equals(symbol)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }

    List<String> names() {
        return names;
    }

    boolean isNamed(String text) {
        return symbol.equals(text) || names.contains(text) || names.contains(text.toLowerCase(Locale.ROOT));
    }
}
