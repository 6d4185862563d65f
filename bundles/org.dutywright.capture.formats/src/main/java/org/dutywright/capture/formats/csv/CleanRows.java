// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.util.Arrays;
import org.dutywright.capture.Delimiter;

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
    private final byte mark;
    private final boolean allWanted;
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
        mark = (byte) (layout.decimalComma() ? ',' : '.');
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
        boolean numbers = plan.time().filter(TimeColumn::clock).isEmpty();
        if (timeColumn >= 0) {
            roles[timeColumn] = TIME;
        }
        allWanted = Arrays.stream(roles).noneMatch(role -> role == SKIPPED) && !spaces;
        // a cell and its end are two bytes at least; a column that is wanted twice, or of clock times, is for others
        capacity = once && apart && numbers ? bytes / (2 * roles.length) + 1 : 0;
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
        boolean plain = allWanted;
        while (end < to && count < capacity) {
            int next = plain ? plainRow(bytes, end) : NOT_CLEAN;
            if (next == NOT_CLEAN) {
                plain = false;
                next = row(bytes, end);
            }
            if (next == NOT_CLEAN) {
                break;
            }
            end = next;
            count++;
        }
        return this;
    }

    /**
     * A row of numbers without exponents or spaces, which most rows are. It is one method, with all in local variables,
     * because this loop is what reading text spends its time in: split up like {@link #row} it takes half as long again.
     */
    private int plainRow(byte[] bytes, int lineStart) {
        int at = lineStart;
        int start = at;
        double stampValue = 0;
        long stampWhole = 0;
        int stampDecimals = 0;
        for (int column = 0; column < roles.length; column++) {
            start = at;
            boolean negative = bytes[at] == '-';
            at += negative ? 1 : 0;
            int from = at;
            long number = 0;
            for (int digit = bytes[at] - '0'; digit >= 0 && digit <= 9; digit = bytes[++at] - '0') {
                number = number * 10 + digit;
            }
            int wholeDigits = at - from;
            int decimals = 0;
            if (bytes[at] == mark) {
                int behind = ++at;
                int here;
                do {
                    long eight = DecimalScan.eight(bytes, at);
                    here = DecimalScan.digits(eight);
                    if (here == 0) {
                        break;
                    }
                    number = DecimalScan.append(number, eight, here);
                    at += here;
                } while (here == Long.BYTES);
                decimals = at - behind;
            }
            byte after = bytes[at++];
            boolean ends = column + 1 < roles.length ? after == delimiter : after == '\n' || after == '\r';
            if (!ends || !DecimalScan.isExact(number, wholeDigits + decimals)) {
                return NOT_CLEAN;
            }
            double magnitude = DecimalScan.divided(number, decimals);
            double value = negative ? -magnitude : magnitude;
            if (roles[column] >= 0) {
                values[roles[column]][count] = value * factors[roles[column]];
            } else if (value < lastStamp) {
                return NOT_CLEAN;
            } else {
                stampValue = value;
                stampWhole = number;
                stampDecimals = decimals;
            }
        }
        rowDone(at - 1 - start, stampValue);
        if (timeColumn >= 0) {
            digits.add(stampWhole, stampDecimals);
        }
        return at + (bytes[at - 1] == '\r' && bytes[at] == '\n' ? 1 : 0);
    }

    /** Only now is it sure that the row is clean and counts. */
    private void rowDone(int lastLength, double stampValue) {
        shortestLast = Math.min(shortestLast, lastLength);
        if (timeColumn >= 0) {
            lastStamp = stampValue;
            firstStamp = count == 0 ? lastStamp : firstStamp;
            seconds[count] = lastStamp * timeFactor;
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
                return column == last ? done(bytes, after) : NOT_CLEAN;
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
                return done(bytes, at);
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

    private int done(byte[] bytes, int at) {
        rowDone(lastLength, stamp.value());
        if (timeColumn >= 0) {
            stamp.addTo(digits, bytes, stampStart, stampEnd);
        }
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
