// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.dutywright.capture.Delimiter;

/**
 * A row of a table as cells of text.
 *
 * @param line number of the line where it starts, from 1
 * @param cells without spaces around
 */
record HeadRow(long line, List<String> cells) {
    private static final Pattern SPACES = Pattern.compile("[ \t]+");

    /** Splits text into rows; lines without anything but spaces are left out. */
    static List<HeadRow> split(String text, Delimiter delimiter) {
        List<HeadRow> plain = plain(text, delimiter);
        if (delimiter == Delimiter.SPACES || text.indexOf('"') < 0) {
            return plain;
        }
        List<HeadRow> quoted = quoted(text, delimiter);
        // a stray quote in the text before a table swallows half of the file
        return 2 * quoted.size() < plain.size() ? plain : quoted;
    }

    private static List<HeadRow> plain(String text, Delimiter delimiter) {
        List<HeadRow> rows = new ArrayList<>();
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            boolean spaces = delimiter == Delimiter.SPACES;
            add(rows, i + 1, spaces ? List.of(SPACES.split(line.strip(), -1)) : cells(line, delimiter.symbol()));
        }
        return rows;
    }

    private static List<String> cells(String line, char delimiter) {
        List<String> cells = new ArrayList<>();
        int from = 0;
        for (int to = line.indexOf(delimiter); to >= 0; to = line.indexOf(delimiter, from)) {
            cells.add(line.substring(from, to));
            from = to + 1;
        }
        cells.add(line.substring(from));
        return cells;
    }

    private static List<HeadRow> quoted(String text, Delimiter delimiter) {
        List<HeadRow> rows = new ArrayList<>();
        try (CsvReader<CsvRecord> reader = builder(delimiter).ofCsvRecord(text)) {
            for (CsvRecord row : reader) {
                add(rows, row.getStartingLineNumber(), row.getFields());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (CsvParseException e) {
            return List.of();
        }
        return rows;
    }

    /** How quoted text is read: as RFC 4180 says, with any number of cells in a row. */
    static CsvReader.CsvReaderBuilder builder(Delimiter delimiter) {
        return CsvReader.builder()
                .fieldSeparator(delimiter.symbol())
                .commentStrategy(CommentStrategy.NONE)
                .skipEmptyLines(true)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .allowUnclosedQuote(true)
                .trimWhitespacesAroundQuotes(true);
    }

    private static void add(List<HeadRow> rows, long line, List<String> cells) {
        List<String> stripped = cells.stream().map(String::strip).toList();
        if (stripped.size() > 1 || !stripped.get(0).isEmpty()) {
            rows.add(new HeadRow(line, stripped));
        }
    }

    int width() {
        return cells.size();
    }

    String cell(int column) {
        return column < cells.size() ? cells.get(column) : "";
    }

    boolean isComment() {
        return cells.get(0).startsWith("#");
    }
}
