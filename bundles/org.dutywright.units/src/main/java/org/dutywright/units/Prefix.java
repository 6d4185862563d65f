// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

import java.util.List;

/** The SI prefixes of the trade. */
enum Prefix {
    GIGA(9, "giga", "G"),
    MEGA(6, "mega", "M"),
    // the capital K is no SI, but is written in the trade and means nothing else here
    KILO(3, "kilo", "k", "K"),
    NONE(0, "", ""),
    MILLI(-3, "milli", "m"),
    MICRO(-6, "micro", "µ", "\u03bc", "u"),
    NANO(-9, "nano", "n"),
    PICO(-12, "pico", "p");

    private final int exponent;
    private final String word;
    // unmodifiable, which the type does not say
    @SuppressWarnings("ImmutableEnumChecker")
    private final List<String> symbols;

    Prefix(int exponent, String word, String... symbols) {
        this.exponent = exponent;
        this.word = word;
        this.symbols = List.of(symbols);
    }

    /** Power of ten. */
    int exponent() {
        return exponent;
    }

    /** The factor, exact for positive exponents and correctly rounded for negative ones. */
    double factor() {
        return Double.parseDouble("1e" + exponent);
    }

    String symbol() {
        return symbols.getFirst();
    }

    String word() {
        return word;
    }

    List<String> symbols() {
        return symbols;
    }
}
