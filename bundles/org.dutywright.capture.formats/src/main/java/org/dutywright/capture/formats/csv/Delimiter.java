// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

/** What stands between two cells; of two that fit equally well, the first is taken. */
enum Delimiter {
    TAB('\t', "tab"),
    SEMICOLON(';', "semicolon"),
    PIPE('|', "vertical bar"),
    COMMA(',', "comma"),
    /** Runs of spaces or tabs. */
    SPACES(' ', "spaces");

    private final char symbol;
    private final String word;

    Delimiter(char symbol, String word) {
        this.symbol = symbol;
        this.word = word;
    }

    char symbol() {
        return symbol;
    }

    String word() {
        return word;
    }
}
