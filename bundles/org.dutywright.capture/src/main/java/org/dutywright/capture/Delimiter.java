// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

/** What stands between two cells of a text table; of two that fit equally well, a reader takes the first. */
public enum Delimiter {
    /** A tab. */
    TAB('\t', "tab"),
    /** A semicolon. */
    SEMICOLON(';', "semicolon"),
    /** A vertical bar. */
    PIPE('|', "vertical bar"),
    /** A comma. */
    COMMA(',', "comma"),
    /** Runs of spaces or tabs. */
    SPACES(' ', "spaces");

    private final char symbol;
    private final String word;

    Delimiter(char symbol, String word) {
        this.symbol = symbol;
        this.word = word;
    }

    /** The character, one space for runs of them. */
    public char symbol() {
        return symbol;
    }

    /** What it is called, in messages and in texts of settings. */
    public String word() {
        return word;
    }
}
