// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The page of a study: Markdown, made of paragraphs and tables. For one thread. */
public final class Page {
    private final StringBuilder text = new StringBuilder();

    /** An empty page with a title. */
    public Page(String title) {
        text.append("# ").append(title).append("\n");
    }

    /** Adds a heading below the title. */
    public Page heading(String words) {
        text.append("\n## ").append(words).append("\n");
        return this;
    }

    /** Adds a paragraph. */
    public Page paragraph(String words) {
        text.append("\n").append(words).append("\n");
        return this;
    }

    /** Adds a table. */
    public Page table(Table table) {
        text.append("\n").append(table.text());
        return this;
    }

    /** The page as text. */
    public String text() {
        return text.toString();
    }

    /** A table; its columns are aligned, so that it can be read without a viewer. */
    public static final class Table {
        private final List<String[]> rows = new ArrayList<>();

        /** A table without rows. */
        public Table(String... headings) {
            rows.add(headings.clone());
        }

        /**
         * Adds a row.
         *
         * @throws IllegalArgumentException if it has more or fewer cells than there are headings
         */
        public Table row(Object... cells) {
            if (cells.length != rows.get(0).length) {
                throw new IllegalArgumentException("a row needs " + rows.get(0).length + " cells, not " + cells.length);
            }
            rows.add(Arrays.stream(cells).map(String::valueOf).toArray(String[]::new));
            return this;
        }

        private String text() {
            StringBuilder table = new StringBuilder();
            for (int i = 0; i < rows.size(); i++) {
                line(table, rows.get(i), ' ');
                if (i == 0) {
                    String[] rule = new String[rows.get(0).length];
                    Arrays.fill(rule, "");
                    line(table, rule, '-');
                }
            }
            return table.toString();
        }

        private void line(StringBuilder table, String[] cells, char fill) {
            for (int column = 0; column < cells.length; column++) {
                table.append(fill == '-' ? "|-" : "| ");
                table.append(cells[column]);
                table.append(String.valueOf(fill).repeat(width(column) - cells[column].length()));
                table.append(fill == '-' ? "-" : " ");
            }
            table.append("|\n");
        }

        private int width(int column) {
            return rows.stream().mapToInt(row -> row[column].length()).max().orElse(0);
        }
    }
}
