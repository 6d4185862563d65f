// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** An end of travel that the user says the sensor was at. */
public enum Position {
    RELEASED,
    PRESSED;

    /** The word used on the command line and in items. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The position of a word, empty if there is none. */
    public static Optional<Position> ofWord(String word) {
        return Arrays.stream(values()).filter(it -> it.word().equals(word)).findFirst();
    }
}
