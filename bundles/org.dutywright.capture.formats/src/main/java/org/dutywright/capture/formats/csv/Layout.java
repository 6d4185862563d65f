// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.util.List;
import java.util.Optional;
import org.dutywright.capture.ColumnHeading;
import org.dutywright.capture.Delimiter;

/**
 * How the table in a file is laid out.
 *
 * @param delimiter between cells
 * @param decimalComma whether numbers have a decimal comma
 * @param header line of headings
 * @param units line of units below it
 * @param sample rows of values at its start, as text
 * @param kinds what each column holds
 * @param quoted whether cells of the sample are quoted
 */
record Layout(
        Delimiter delimiter,
        boolean decimalComma,
        Optional<HeadRow> header,
        Optional<HeadRow> units,
        List<HeadRow> sample,
        List<Kind> kinds,
        boolean quoted) {

    /** What a column holds. */
    enum Kind {
        NUMBERS,
        EMPTY,
        /** Numbers, but in less than half of the rows. */
        SPARSE,
        /** Clock times, with or without dates. */
        CLOCK,
        TEXT
    }

    /** Number of columns. */
    int width() {
        return kinds.size();
    }

    /** Line of the first row of values, from 1. */
    long firstDataLine() {
        return sample.get(0).line();
    }

    /** Number of lines before the table and its headings. */
    long preambleLines() {
        long first = units.map(HeadRow::line).orElse(firstDataLine());
        return header.map(HeadRow::line).orElse(first) - 1;
    }

    /** The same with quoted cells. */
    Layout withQuotes() {
        return new Layout(delimiter, decimalComma, header, units, sample, kinds, true);
    }

    ColumnHeading heading(int column) {
        return ColumnHeading.of(
                header.map(row -> row.cell(column)).orElse(""),
                units.map(row -> row.cell(column)).orElse(""));
    }
}
