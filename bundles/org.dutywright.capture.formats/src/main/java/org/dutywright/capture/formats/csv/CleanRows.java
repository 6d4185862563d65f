// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.util.Arrays;

/**
 * Reads lines of nothing but numbers where numbers are wanted, as nearly all lines are; it stops at the first line that
 * is anything else, which is then for {@link RowSplitter} to judge. What it takes it takes as {@link RowCollector} does,
 * to the last bit. The bytes after the stretch that is read must not be part of a number or a line end. For one thread.
 */
final class CleanRows {
    /** Where the row is not clean. */
    private static final int NOT_CLEAN = -1;

    private static final int SKIPPED = -1;
    private static final int TIME = -2;

    private final DecimalScan number;
    private final DecimalScan stamp;
    private final boolean spaces;
    private final byte delimiter;
    private final int width;
    private final int timeColumn;
    private final double timeFactor;
    private final int[] roles;
    private final double[] factors;
    private final double[][] values;
    private final double[] seconds;
    private final int capacity;
    private StampDigits digits = new StampDigits();
    private int count;
    private int end;
    private int shortestLast;
    private double firstStamp;
    private double lastStamp;
    private int stampStart;
    private int stampEnd;
    private int lastLength;

    /**
     * Makes one.
     *
     * @param bytes about how many are read at a time, for the size of what is held
     */
    CleanRows(Layout layout, ColumnPlan plan, int bytes) {
        number = new DecimalScan(layout.decimalComma());
        stamp = new DecimalScan(layout.decimalComma());
        spaces = layout.delimiter() == Delimiter.SPACES;
        delimiter = (byte) layout.delimiter().symbol();
        width = layout.width();
        timeColumn = plan.time().map(TimeColumn::column).orElse(SKIPPED);
        timeFactor = plan.time().map(TimeColumn::factor).orElse(1.0);
        int[] columns = plan.channelColumns();
        factors = plan.channelFactors();
        roles = new int[Math.max(timeColumn, Arrays.stream(columns).max().orElse(0)) + 1];
        Arrays.fill(roles, SKIPPED);
        for (int i = 0; i < columns.length; i++) {
            roles[columns[i]] = i;
        }
        boolean once = Arrays.stream(columns).distinct().count() == columns.length;
        boolean apart = timeColumn < 0 || roles[timeColumn] == SKIPPED;
        if (timeColumn >= 0) {
            roles[timeColumn] = TIME;
        }
        // a cell and its end are two bytes at least; a column that is wanted twice is for others
        capacity = once && apart ? bytes / (2 * roles.length) + 1 : 0;
        values = new double[columns.length][capacity];
        seconds = new double[timeColumn < 0 ? 0 : capacity];
    }

    /**
     * Reads lines from a place on, each from its start.
     *
     * @return this
     */
    CleanRows parse(byte[] bytes, int from, int to) {
        count = 0;
        end = from;
        shortestLast = Integer.MAX_VALUE;
        digits = new StampDigits();
        lastStamp = Double.NEGATIVE_INFINITY;
        while (end < to && count < capacity) {
            int next = row(bytes, end);
            if (next == NOT_CLEAN) {
                break;
            }
            rowDone(bytes);
            end = next;
            count++;
        }
        return this;
    }

    /** Only now is it sure that the row is clean and counts. */
    private void rowDone(byte[] bytes) {
        shortestLast = Math.min(shortestLast, lastLength);
        if (timeColumn >= 0) {
            lastStamp = stamp.value();
            firstStamp = count == 0 ? lastStamp : firstStamp;
            seconds[count] = lastStamp * timeFactor;
            stamp.addTo(digits, bytes, stampStart, stampEnd);
        }
    }

    private int row(byte[] bytes, int lineStart) {
        int at = skipSpaces(bytes, lineStart);
        if (bytes[at] == '#') {
            return NOT_CLEAN;
        }
        int last = roles.length - 1;
        for (int column = 0; column <= last; column++) {
            int start = skipSpaces(bytes, at);
            at = roles[column] == SKIPPED ? skipCell(bytes, start) : cell(bytes, start, column);
            if (at == NOT_CLEAN) {
                return NOT_CLEAN;
            }
            int after = skipSpaces(bytes, at);
            byte b = bytes[after];
            if (b == '\n' || b == '\r') {
                return column == last ? lineEnd(bytes, after) : NOT_CLEAN;
            }
            if (spaces ? after == at : b != delimiter) {
                return NOT_CLEAN;
            }
            at = spaces ? after : after + 1;
        }
        return rest(bytes, at);
    }

    private int cell(byte[] bytes, int start, int column) {
        int role = roles[column];
        int at = (role == TIME ? stamp : number).scan(bytes, start);
        if (at == DecimalScan.NO_NUMBER) {
            return NOT_CLEAN;
        }
        lastLength = at - start;
        if (role == TIME) {
            stampStart = start;
            stampEnd = at;
            return stamp.value() < lastStamp ? NOT_CLEAN : at;
        }
        values[role][count] = number.value() * factors[role];
        return at;
    }

    /** Skips a cell that is not wanted; quotes are not for here. */
    private int skipCell(byte[] bytes, int start) {
        if (bytes[start] == '"' && !spaces) {
            return NOT_CLEAN;
        }
        int at = start;
        while (!endsCell(bytes[at])) {
            at++;
        }
        return bytes[at] == 0 ? NOT_CLEAN : at;
    }

    private boolean endsCell(byte b) {
        return b == delimiter || b == '\n' || b == '\r' || b == 0 || (spaces && b == '\t');
    }

    /** Skips the cells behind the last one that is wanted. */
    private int rest(byte[] bytes, int from) {
        int at = from;
        for (int column = roles.length; ; column++) {
            int start = skipSpaces(bytes, at);
            at = skipCell(bytes, start);
            if (at == NOT_CLEAN || (column >= width && at > start)) {
                return NOT_CLEAN;
            }
            at = spaces ? skipSpaces(bytes, at) : at;
            if (bytes[at] == '\n' || bytes[at] == '\r') {
                return lineEnd(bytes, at);
            }
            at += spaces ? 0 : 1;
        }
    }

    private int skipSpaces(byte[] bytes, int from) {
        int at = from;
        while (bytes[at] == ' ' || (bytes[at] == '\t' && delimiter != '\t')) {
            at++;
        }
        return at;
    }

    private static int lineEnd(byte[] bytes, int at) {
        return at + (bytes[at] == '\r' && bytes[at + 1] == '\n' ? 2 : 1);
    }

    /** Number of rows, each of them a line. */
    int count() {
        return count;
    }

    /** Where the line starts that was not read. */
    int end() {
        return end;
    }

    /** Values of each channel, scaled. */
    double[][] values() {
        return values;
    }

    /** Instants in seconds, if there is a column of time. */
    double[] seconds() {
        return seconds;
    }

    /** The first stamp as it stands in the file. */
    double firstStamp() {
        return firstStamp;
    }

    /** The last stamp as it stands in the file. */
    double lastStamp() {
        return lastStamp;
    }

    /** Length of the shortest cell in the last column that is wanted. */
    int shortestLast() {
        return shortestLast;
    }

    /** How finely the stamps were printed. */
    StampDigits digits() {
        return digits;
    }
}
