// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

import java.util.Locale;

/** Makes parts of a text fit for a message: a text of unknown origin may hold anything. */
final class Visible {
    private static final int MAX_QUOTED = 80;

    private Visible() {}

    /** The text with control and formatting characters written out. */
    static String of(String text) {
        if (text.codePoints().noneMatch(Visible::isInvisible)) {
            return text;
        }
        StringBuilder visible = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (c == '\n') {
                visible.append("\\n");
            } else if (isInvisible(c)) {
                visible.append(String.format(Locale.ROOT, "\\u%04x", c));
            } else {
                visible.appendCodePoint(c);
            }
        });
        return visible.toString();
    }

    private static boolean isInvisible(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.SURROGATE -> true;
            default -> false;
        };
    }

    /** The beginning of a text that is too long for a message, the whole of one that is not. */
    static String shortened(String text) {
        if (text.codePointCount(0, text.length()) <= MAX_QUOTED) {
            return text;
        }
        return text.substring(0, text.offsetByCodePoints(0, MAX_QUOTED)) + "…";
    }
}
