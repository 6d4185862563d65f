// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

import java.util.Locale;
import java.util.Optional;

/**
 * A unit with an SI prefix.
 *
 * @param unit the unit without prefix
 * @param factor what one of this is in {@code unit}
 */
public record ScaledUnit(Unit unit, double factor) {

    /**
     * Reads a unit: a symbol with or without prefix ("mV", "µs", "kHz"), or a name ("Volts", "milliseconds",
     * "msec"). Case matters for symbols, since m and M differ, but not for names.
     *
     * @return empty if it is not a known unit
     */
    public static Optional<ScaledUnit> parse(String text) {
        String trimmed = text.strip();
        for (Unit unit : Unit.values()) {
            if (unit.isNamed(trimmed)) {
                return Optional.of(new ScaledUnit(unit, 1));
            }
        }
        for (Unit unit : Unit.values()) {
            if (unit.takesPrefix()) {
                Optional<ScaledUnit> found = parsePrefixed(unit, trimmed);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    /** As {@link #parse} reads it: symbol with its prefix; empty if no prefix stands for the factor. */
    public Optional<String> symbol() {
        for (Prefix prefix : Prefix.values()) {
            if (prefix.factor() == factor && (prefix == Prefix.NONE || unit.takesPrefix())) {
                return Optional.of(prefix.symbol() + unit.symbol());
            }
        }
        return Optional.empty();
    }

    private static Optional<ScaledUnit> parsePrefixed(Unit unit, String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        for (Prefix prefix : Prefix.values()) {
            if (prefix == Prefix.NONE) {
                continue;
            }
            boolean spelled = lower.startsWith(prefix.word())
                    && unit.isNamed(lower.substring(prefix.word().length()).strip());
            if (spelled || startsWithSymbol(prefix, unit, text)) {
                return Optional.of(new ScaledUnit(unit, prefix.factor()));
            }
        }
        return Optional.empty();
    }

    private static boolean startsWithSymbol(Prefix prefix, Unit unit, String text) {
        return prefix.symbols().stream()
                .anyMatch(symbol -> text.startsWith(symbol) && unit.isNamed(text.substring(symbol.length())));
    }
}
