// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

/** Finds lines in text: they end with CR LF, LF or CR. */
final class LineStarts {
    private LineStarts() {}

    /** Offset of the first character of a line (the first line is 1), or the length of the text. */
    static int offset(String text, long line) {
        long at = 1;
        int i = 0;
        while (at < line && i < text.length()) {
            char c = text.charAt(i++);
            if (c == '\r' && i < text.length() && text.charAt(i) == '\n') {
                i++;
            }
            at += c == '\r' || c == '\n' ? 1 : 0;
        }
        return i;
    }
}
