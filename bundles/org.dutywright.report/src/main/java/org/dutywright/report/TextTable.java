// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.util.ArrayList;
import java.util.List;

/** Rows of cells, printed so that the columns start at the same place; the last column is as long as it needs. */
public final class TextTable {
    private static final String BETWEEN = "  ";
    private final List<List<String>> rows = new ArrayList<>();

    private TextTable() {}

    /** An empty table. */
    public static TextTable create() {
        return new TextTable();
    }

    /** Adds a row; rows may differ in length. */
    public TextTable row(String... cells) {
        rows.add(List.of(cells));
        return this;
    }

    /** Whether it has no row. */
    public boolean isEmpty() {
        return rows.isEmpty();
    }

    /** The lines, without line ends and without blanks at their ends. */
    public List<String> lines() {
        List<Integer> widths = widths();
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < row.size(); i++) {
                boolean last = i == row.size() - 1;
                line.append(row.get(i));
                if (!last) {
                    line.append(" ".repeat(widths.get(i) - length(row.get(i)))).append(BETWEEN);
                }
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }

    // The last cell of a row does not widen its column: it may be a whole sentence.
    private List<Integer> widths() {
        List<Integer> widths = new ArrayList<>();
        for (List<String> row : rows) {
            for (int i = 0; i < row.size() - 1; i++) {
                if (i == widths.size()) {
                    widths.add(0);
                }
                widths.set(i, Math.max(widths.get(i), length(row.get(i))));
            }
        }
        return widths;
    }

    private static int length(String cell) {
        return cell.codePointCount(0, cell.length());
    }
}
