// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Iterator;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.DigestStream;

/** Splits text with quotes, or in an encoding of two bytes a character, into rows; slower than {@link FastRows}. */
final class QuotedRows {
    private final Path file;
    private final DigestStream stream;
    private final HeadText head;
    private final Layout layout;
    private final Row row = new Row(StandardCharsets.UTF_8, false);

    QuotedRows(Path file, DigestStream stream, HeadText head, Layout layout) {
        this.file = file;
        this.stream = stream;
        this.head = head;
        this.layout = layout;
    }

    /** Gives all rows of values to the collector. */
    void read(RowCollector collector) throws UnreadableException, IOException {
        int before = Math.toIntExact(layout.firstDataLine() - 1);
        CsvReader.CsvReaderBuilder builder = HeadRow.builder(layout.delimiter()).detectBomHeader(true);
        try (CsvReader<CsvRecord> reader = builder.ofCsvRecord(stream, head.charset())) {
            reader.skipLines(before);
            Iterator<CsvRecord> records = reader.iterator();
            while (records.hasNext()) {
                fill(records.next());
                row.terminated = records.hasNext() || stream.endsWithLineEnd();
                boolean blank = row.isEmpty(0);
                if (blank ? row.count > 1 : row.bytes[row.starts[0]] != '#') {
                    collector.take(row);
                }
            }
        } catch (UncheckedIOException e) {
            throw e.getCause();
        } catch (CsvParseException e) {
            throw new UnreadableException(
                    file,
                    "line " + (row.line + 1) + " or later",
                    "a quoted cell is longer than any number or name",
                    "look for a quotation mark without its partner");
        }
    }

    private void fill(CsvRecord each) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        row.line = each.getStartingLineNumber();
        row.count = 0;
        int[] ends = new int[each.getFieldCount()];
        for (int i = 0; i < ends.length; i++) {
            bytes.writeBytes(each.getField(i).getBytes(StandardCharsets.UTF_8));
            ends[i] = bytes.size();
        }
        row.bytes = bytes.toByteArray();
        for (int i = 0; i < ends.length; i++) {
            row.add(i == 0 ? 0 : ends[i - 1], ends[i]);
        }
    }
}
