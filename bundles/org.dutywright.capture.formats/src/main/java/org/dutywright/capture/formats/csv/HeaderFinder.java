// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.dutywright.capture.ColumnHeading;
import org.dutywright.capture.Delimiter;
import org.dutywright.capture.TableSettings;
import org.dutywright.capture.formats.csv.Layout.Kind;

/**
 * The lines of headings and units above a table.
 *
 * @param header line of headings
 * @param units line of units
 */
record HeaderFinder(Optional<HeadRow> header, Optional<HeadRow> units) {

    /**
     * Looks for them in the lines directly above the first row of values. Comments between are passed over, unless
     * only a comment fits: some programs mark the headings as one.
     *
     * @param rows all rows, comments included
     * @param first first row of values
     */
    static HeaderFinder of(
            List<HeadRow> rows, HeadRow first, List<Kind> kinds, Delimiter delimiter, NumberCell number) {
        List<HeadRow> above = new ArrayList<>();
        Optional<HeadRow> comment = Optional.empty();
        for (HeadRow row : rows) {
            if (row.line() >= first.line()) {
                break;
            }
            if (row.isComment()) {
                comment = Optional.of(row);
            } else {
                above.add(row);
                comment = Optional.empty();
            }
        }
        Optional<HeadRow> last = fitting(above, 1, kinds, delimiter);
        if (last.isEmpty()) {
            return new HeaderFinder(
                    comment.flatMap(row -> fitted(uncommented(row), kinds, delimiter)), Optional.empty());
        }
        if (!isUnits(last.get())) {
            return new HeaderFinder(last, Optional.empty());
        }
        Optional<HeadRow> before = fitting(above, 2, kinds, delimiter).filter(row -> !hasNumber(row, number));
        return new HeaderFinder(before, last);
    }

    /** The same where the user says which lines they are. */
    HeaderFinder as(TableSettings said, List<HeadRow> rows) {
        return new HeaderFinder(
                said.headerLine().isPresent() ? line(rows, said.headerLine()) : header,
                said.unitsLine().isPresent() ? line(rows, said.unitsLine()) : units);
    }

    private static Optional<HeadRow> line(List<HeadRow> rows, OptionalLong line) {
        return rows.stream()
                .filter(row -> row.line() == line.getAsLong())
                .findFirst()
                .map(row -> row.isComment() ? uncommented(row) : row);
    }

    private static Optional<HeadRow> fitting(List<HeadRow> above, int fromEnd, List<Kind> kinds, Delimiter delimiter) {
        return above.size() < fromEnd ? Optional.empty() : fitted(above.get(above.size() - fromEnd), kinds, delimiter);
    }

    private static Optional<HeadRow> fitted(HeadRow row, List<Kind> kinds, Delimiter delimiter) {
        int last = kinds.size() - 1;
        boolean withoutLast = row.width() == last && kinds.get(last) == Kind.EMPTY;
        if (row.width() == kinds.size() || (withoutLast && last > 0)) {
            return Optional.of(row);
        }
        if (delimiter == Delimiter.SPACES) {
            // "time (s)" is one heading of two words
            HeadRow merged = merged(row);
            if (merged.width() == kinds.size()) {
                return Optional.of(merged);
            }
        }
        return Optional.empty();
    }

    private static HeadRow merged(HeadRow row) {
        List<String> cells = new ArrayList<>();
        for (String cell : row.cells()) {
            boolean unit = cell.startsWith("(") || cell.startsWith("[");
            if (unit && !cells.isEmpty()) {
                cells.add(cells.remove(cells.size() - 1) + " " + cell);
            } else {
                cells.add(cell);
            }
        }
        return new HeadRow(row.line(), cells);
    }

    private static HeadRow uncommented(HeadRow row) {
        List<String> cells = new ArrayList<>(row.cells());
        String first = cells.remove(0).substring(1).strip();
        if (!first.isEmpty() || cells.isEmpty()) {
            cells.add(0, first);
        }
        return new HeadRow(row.line(), cells);
    }

    private static boolean isUnits(HeadRow row) {
        return row.cells().stream().allMatch(cell -> cell.isEmpty() || ColumnHeading.isUnit(cell))
                && row.cells().stream()
                        .anyMatch(cell -> !cell.equals(ColumnHeading.NO_UNIT) && ColumnHeading.isUnit(cell));
    }

    private static boolean hasNumber(HeadRow row, NumberCell number) {
        return row.cells().stream().anyMatch(number::isNumber);
    }
}
