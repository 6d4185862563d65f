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
                last(used, collector);
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
        int start = 0;
        for (int i = 0; i < filled; i++) {
            byte b = bytes[i];
            if (b != '\n' && b != '\r') {
                continue;
            }
            int next = i + 1;
            if (b == '\r') {
                if (next == filled && !end) {
                    // its line feed may be still to come
                    break;
                }
                next += next < filled && bytes[next] == '\n' ? 1 : 0;
            }
            line(start, i, true, collector);
            start = next;
            i = next - 1;
        }
        return start;
    }

    private void last(int used, RowCollector collector) throws UnreadableException, IOException, QuoteFound {
        boolean endMark = filled > used && buffer[filled - 1] == 0x1A;
        line(used, endMark ? filled - 1 : filled, endMark, collector);
    }

    private void line(int from, int to, boolean terminated, RowCollector collector)
            throws UnreadableException, IOException, QuoteFound {
        long number = line++;
        if (number < firstDataLine || isSkipped(from, to)) {
            return;
        }
        row.bytes = buffer;
        row.lineStart = from;
        row.line = number;
        row.terminated = terminated;
        row.count = 0;
        if (spaces) {
            splitAtSpaces(from, to);
        } else {
            split(from, to);
        }
        collector.take(row);
    }

    private boolean isSkipped(int from, int to) {
        int at = from;
        while (at < to && Row.isSpace(buffer[at])) {
            at++;
        }
        return at == to || buffer[at] == '#';
    }

    private void split(int from, int to) throws QuoteFound {
        byte[] bytes = buffer;
        int start = from;
        for (int i = from; i < to; i++) {
            if (bytes[i] == delimiter) {
                cell(start, i);
                start = i + 1;
            }
        }
        cell(start, to);
    }

    private void cell(int from, int to) throws QuoteFound {
        row.add(from, to);
        int start = row.starts[row.count - 1];
        if (start < to && buffer[start] == '"') {
            throw new QuoteFound();
        }
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
