// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.UnreadableException;

/** Turns rows of cells into rows of numbers. */
final class RowCollector {
    private static final int LONGEST_QUOTE = 40;
    private static final long ROWS_TO_COMPARE = 100;

    private final Path file;
    private final Layout layout;
    private final CaptureBuilder builder;
    private final NumberCell number;
    private final int[] columns;
    private final double[] factors;
    private final Optional<StampCells> stamps;
    private final int cellsNeeded;
    private final double[] values;
    private long firstLeftOutLine;
    private Optional<String> spoiledEnd = Optional.empty();
    private int shortestLast = Integer.MAX_VALUE;
    private boolean shortRowBefore;
    private long shortRowLine;

    RowCollector(Path file, Layout layout, ColumnPlan plan, CaptureBuilder builder) {
        this.file = file;
        this.layout = layout;
        this.builder = builder;
        number = new NumberCell(layout.decimalComma());
        columns = plan.channelColumns();
        factors = plan.channelFactors();
        stamps = plan.time().map(time -> new StampCells(file, time, number));
        cellsNeeded = Math.max(
                        stamps.map(StampCells::column).orElse(-1),
                        Arrays.stream(columns).max().orElse(0))
                + 1;
        values = new double[columns.length];
    }

    /**
     * Takes a row of the table.
     *
     * @throws UnreadableException if a cell that is needed holds anything but a number
     */
    void take(Row row) throws UnreadableException, IOException {
        leaveOutShortRow();
        if (row.count > layout.width()) {
            checkExtraCells(row);
        }
        if (row.count < cellsNeeded) {
            // left out as the last line if no other follows
            shortRowBefore = true;
            shortRowLine = row.line;
            return;
        }
        if (isCutShort(row)) {
            spoiledEnd = Optional.of("line " + row.line + ", cut off, left out");
            return;
        }
        double stamp = stamps.isEmpty() ? 0 : readStamp(row, stamps.get());
        boolean complete = !Double.isNaN(stamp);
        for (int i = 0; i < columns.length; i++) {
            values[i] = read(row, columns[i]) * factors[i];
            complete &= !Double.isNaN(values[i]);
        }
        if (spoiledEnd.isPresent()) {
            return;
        }
        if (!complete) {
            leaveOut(row.line);
        } else if (stamps.isEmpty()) {
            builder.append(values);
        } else {
            builder.append(stamps.get().take(row, stamp), values);
        }
    }

    /** Whether the rows follow in time on those before. */
    boolean follows(CleanRows rows) {
        return stamps.isEmpty() || rows.firstStamp() >= stamps.get().last();
    }

    /** Takes rows of the table that follow on those before. */
    void take(CleanRows rows) throws IOException {
        leaveOutShortRow();
        shortestLast = Math.min(shortestLast, rows.shortestLast());
        if (stamps.isEmpty()) {
            builder.append(rows.values(), rows.count());
            return;
        }
        stamps.get().take(rows);
        builder.append(rows.seconds(), rows.values(), rows.count());
    }

    private void leaveOutShortRow() {
        if (shortRowBefore) {
            leaveOut(shortRowLine);
            shortRowBefore = false;
        }
    }

    /**
     * Whether the last line ends without a line end and with a cell shorter than any in its column before: "1" may
     * be the start of "12.1". Told only where there is something to compare with.
     */
    private boolean isCutShort(Row row) {
        int last = cellsNeeded - 1;
        int length = row.ends[last] - row.starts[last];
        if (row.terminated) {
            shortestLast = Math.min(shortestLast, length);
            return false;
        }
        return row.count == cellsNeeded && length < shortestLast && builder.rowCount() >= ROWS_TO_COMPARE;
    }

    private double readStamp(Row row, StampCells cells) throws UnreadableException {
        try {
            return cells.read(row);
        } catch (NumberFormatException e) {
            return spoiled(row, cells.column(), cells.isClock() ? "no clock time" : "not a number");
        }
    }

    private double read(Row row, int column) throws UnreadableException {
        try {
            return number.parse(row.bytes, row.starts[column], row.ends[column]);
        } catch (NumberFormatException e) {
            return spoiled(row, column, "not a number");
        }
    }

    /** No number in the last line, if that may be cut off; else the end of it all. */
    private double spoiled(Row row, int column, String what) throws UnreadableException {
        if (!row.terminated) {
            spoiledEnd = Optional.of("line " + row.line + ", cut off, left out");
            return Double.NaN;
        }
        throw new UnreadableException(
                file, row.position(column), "'" + quote(row.text(column)) + "' is " + what, advice(column));
    }

    private String advice(int column) {
        String name = layout.heading(column).text();
        String called = name.isEmpty() ? "column " + (column + 1) : "'" + name + "'";
        String rest = column == stamps.map(StampCells::column).orElse(-1)
                ? "export time in seconds from the start"
                : "correct the cell, or pick other columns with --channel";
        return "it stands in " + called + "; " + rest;
    }

    private void checkExtraCells(Row row) throws UnreadableException {
        for (int column = layout.width(); column < row.count; column++) {
            if (!row.isEmpty(column)) {
                throw new UnreadableException(
                        file,
                        row.position(column),
                        "the row has " + row.count + " cells, the rows before have " + layout.width(),
                        "correct the row");
            }
        }
    }

    private void leaveOut(long line) {
        if (builder.leftOutCount() == 0) {
            firstLeftOutLine = line;
        }
        builder.leaveOut();
    }

    private static String quote(String text) {
        String line = text.replaceAll("\\p{Cntrl}", " ");
        return line.length() <= LONGEST_QUOTE ? line : line.substring(0, LONGEST_QUOTE) + "…";
    }

    /** To be called after the last row: says how finely time was printed and what was left out. */
    void finish(Map<String, String> guessed) {
        stamps.ifPresent(cells -> cells.finish(builder, guessed));
        if (shortRowBefore) {
            spoiledEnd = Optional.of("line " + shortRowLine + ", cut off, left out");
        }
        if (builder.leftOutCount() > 0) {
            guessed.put(
                    "rows left out",
                    builder.leftOutCount() + ", because values are missing; the first is line " + firstLeftOutLine);
        }
        spoiledEnd.ifPresent(said -> guessed.put("last line", said));
    }
}
