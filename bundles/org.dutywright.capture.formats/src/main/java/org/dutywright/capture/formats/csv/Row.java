// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.nio.charset.Charset;
import java.util.Arrays;

/** A row of cells as bytes; reused for each row. */
final class Row {
    private final Charset charset;
    private final boolean knowsPositions;
    byte[] bytes = new byte[0];
    int lineStart;
    long line;
    /** Whether the line ended; the last one of a broken recording may not have. */
    boolean terminated;

    int count;
    int[] starts = new int[16];
    int[] ends = new int[16];

    /**
     * Makes a row without cells.
     *
     * @param charset of the bytes
     * @param knowsPositions whether the bytes from {@link #lineStart} on are the line as it stands in the file
     */
    Row(Charset charset, boolean knowsPositions) {
        this.charset = charset;
        this.knowsPositions = knowsPositions;
    }

    /** Adds a cell, without the spaces around it. */
    void add(int from, int to) {
        if (count == starts.length) {
            starts = Arrays.copyOf(starts, 2 * count);
            ends = Arrays.copyOf(ends, 2 * count);
        }
        int start = from;
        int end = to;
        while (start < end && isSpace(bytes[start])) {
            start++;
        }
        while (start < end && isSpace(bytes[end - 1])) {
            end--;
        }
        starts[count] = start;
        ends[count++] = end;
    }

    static boolean isSpace(byte b) {
        return b == ' ' || b == '\t';
    }

    boolean isEmpty(int column) {
        return starts[column] == ends[column];
    }

    String text(int column) {
        return new String(bytes, starts[column], ends[column] - starts[column], charset);
    }

    /** Where a cell stands in the file: line and character, or line and number of the cell where cells are quoted. */
    String position(int column) {
        if (!knowsPositions) {
            return "line " + line + ", cell " + (column + 1);
        }
        int characters = new String(bytes, lineStart, starts[column] - lineStart, charset).length();
        return "line " + line + ", column " + (characters + 1);
    }
}
