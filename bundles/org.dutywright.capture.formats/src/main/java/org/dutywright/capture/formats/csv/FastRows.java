// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import org.dutywright.capture.UnreadableException;

/** Splits text without quotes into rows, as bytes, a buffer at a time. */
final class FastRows {
    private final Path file;
    private final InputStream stream;
    private final HeadText head;
    private final boolean spaces;
    private final byte delimiter;
    private final long firstDataLine;
    private final Row row;
    private final byte[] buffer;
    private int filled;
    private long line = 1;
    private int cellStart;
    private boolean inTable;

    /** Thrown when quotes come up after all; the file must then be read anew by one that knows them. */
    static final class QuoteFound extends Exception {
        private static final long serialVersionUID = 1L;

        QuoteFound() {
            super("quoted cell", null, false, false);
        }
    }

    FastRows(Path file, InputStream stream, HeadText head, Layout layout, int bufferBytes) {
        this.file = file;
        this.stream = stream;
        this.head = head;
        spaces = layout.delimiter() == Delimiter.SPACES;
        delimiter = (byte) layout.delimiter().symbol();
        firstDataLine = layout.firstDataLine();
        buffer = new byte[bufferBytes];
        row = new Row(head.charset(), true);
        row.bytes = buffer;
    }

    /** Gives all rows of values to the collector. */
    void read(RowCollector collector) throws UnreadableException, IOException, QuoteFound {
        if (stream.skip(head.markBytes()) != head.markBytes()) {
            throw new IOException(file + " got shorter while it was read");
        }
        while (true) {
            int bytes = stream.read(buffer, filled, buffer.length - filled);
            boolean end = bytes < 0;
            filled += Math.max(0, bytes);
            int used = lines(end, collector);
            if (end) {
                last(collector);
                return;
            }
            if (used == 0 && filled == buffer.length) {
                throw new UnreadableException(
                        file, "line " + line, "is longer than " + buffer.length + " bytes", "is it a text table?");
            }
            System.arraycopy(buffer, used, buffer, 0, filled - used);
            filled -= used;
        }
    }

    /** Takes all whole lines in the buffer and says how many bytes they have. */
    private int lines(boolean end, RowCollector collector) throws UnreadableException, IOException, QuoteFound {
        byte[] bytes = buffer;
        startLine(0);
        int start = 0;
        for (int i = 0; i < filled; i++) {
            byte b = bytes[i];
            if (b == delimiter) {
                addCell(i);
            } else if (b == '\n' || b == '\r') {
                int next = i + 1;
                if (b == '\r') {
                    if (next == filled && !end) {
                        // its line feed may be still to come
                        break;
                    }
                    next += next < filled && bytes[next] == '\n' ? 1 : 0;
                }
                endLine(i, true, collector);
                startLine(next);
                start = next;
                i = next - 1;
            }
        }
        return start;
    }

    private void last(RowCollector collector) throws UnreadableException, IOException, QuoteFound {
        boolean endMark = filled > row.lineStart && buffer[filled - 1] == 0x1A;
        endLine(endMark ? filled - 1 : filled, endMark, collector);
    }

    private void startLine(int from) {
        row.lineStart = from;
        row.line = line;
        row.count = 0;
        cellStart = from;
        inTable = line >= firstDataLine;
    }

    private void endLine(int to, boolean terminated, RowCollector collector)
            throws UnreadableException, IOException, QuoteFound {
        line++;
        if (!inTable || isSkipped(row.lineStart, to)) {
            return;
        }
        if (spaces) {
            splitAtSpaces(row.lineStart, to);
        } else {
            addCell(to);
        }
        row.terminated = terminated;
        collector.take(row);
    }

    private void addCell(int to) throws QuoteFound {
        if (!inTable || spaces) {
            return;
        }
        row.add(cellStart, to);
        cellStart = to + 1;
        int start = row.starts[row.count - 1];
        if (start < to && buffer[start] == '"') {
            throw new QuoteFound();
        }
    }

    private boolean isSkipped(int from, int to) {
        int at = from;
        while (at < to && Row.isSpace(buffer[at])) {
            at++;
        }
        return at == to || buffer[at] == '#';
    }

    private void splitAtSpaces(int from, int to) {
        int i = from;
        while (i < to) {
            while (i < to && Row.isSpace(buffer[i])) {
                i++;
            }
            int start = i;
            while (i < to && !Row.isSpace(buffer[i])) {
                i++;
            }
            if (start < i) {
                row.add(start, i);
            }
        }
    }
}
