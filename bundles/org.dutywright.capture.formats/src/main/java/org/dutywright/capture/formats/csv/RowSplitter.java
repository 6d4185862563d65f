// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.io.IOException;
import org.dutywright.capture.Delimiter;
import org.dutywright.capture.UnreadableException;

/** Splits lines without quotes into cells, whatever they hold, and gives the rows to the collector. */
final class RowSplitter {
    private static final byte END_MARK = 0x1A;

    private final boolean spaces;
    private final byte delimiter;
    private final long firstDataLine;
    private final RowCollector collector;
    private final Row row;
    private long line = 1;

    /** Thrown when quotes come up after all; the file must then be read anew by one that knows them. */
    static final class QuoteFound extends Exception {
        private static final long serialVersionUID = 1L;

        QuoteFound() {
            super("quoted cell", null, false, false);
        }
    }

    RowSplitter(HeadText head, Layout layout, RowCollector collector) {
        this.collector = collector;
        spaces = layout.delimiter() == Delimiter.SPACES;
        delimiter = (byte) layout.delimiter().symbol();
        firstDataLine = layout.firstDataLine();
        row = new Row(head.charset(), true);
    }

    /** Number of the line that comes next, from 1. */
    long line() {
        return line;
    }

    /** Whether the line that comes next is one of the table. */
    boolean inTable() {
        return line >= firstDataLine;
    }

    /** Says that lines were read elsewhere. */
    void passed(int lines) {
        line += lines;
    }

    /**
     * Takes one line.
     *
     * @param from where it starts
     * @param to end of the bytes that there are
     * @return where the next one starts
     */
    int take(byte[] bytes, int from, int to) throws UnreadableException, IOException, QuoteFound {
        int at = from;
        while (at < to && bytes[at] != '\n' && bytes[at] != '\r') {
            at++;
        }
        boolean ended = at < to;
        int next = at;
        if (ended) {
            next += bytes[at] == '\r' && at + 1 < to && bytes[at + 1] == '\n' ? 2 : 1;
        }
        boolean endMark = !ended && at > from && bytes[at - 1] == END_MARK;
        takeLine(bytes, from, endMark ? at - 1 : at, ended || endMark);
        return next;
    }

    private void takeLine(byte[] bytes, int from, int to, boolean terminated)
            throws UnreadableException, IOException, QuoteFound {
        boolean skipped = !inTable() || isSkipped(bytes, from, to);
        row.bytes = bytes;
        row.lineStart = from;
        row.line = line++;
        row.count = 0;
        row.terminated = terminated;
        if (skipped) {
            return;
        }
        if (spaces) {
            splitAtSpaces(bytes, from, to);
        } else {
            splitAtDelimiters(bytes, from, to);
        }
        collector.take(row);
    }

    private static boolean isSkipped(byte[] bytes, int from, int to) {
        int at = from;
        while (at < to && Row.isSpace(bytes[at])) {
            at++;
        }
        return at == to || bytes[at] == '#';
    }

    private void splitAtDelimiters(byte[] bytes, int from, int to) throws QuoteFound {
        int cellStart = from;
        for (int i = from; i <= to; i++) {
            if (i == to || bytes[i] == delimiter) {
                row.add(cellStart, i);
                cellStart = i + 1;
                int start = row.starts[row.count - 1];
                if (start < i && bytes[start] == '"') {
                    throw new QuoteFound();
                }
            }
        }
    }

    private void splitAtSpaces(byte[] bytes, int from, int to) {
        int i = from;
        while (i < to) {
            while (i < to && Row.isSpace(bytes[i])) {
                i++;
            }
            int start = i;
            while (i < to && !Row.isSpace(bytes[i])) {
                i++;
            }
            if (start < i) {
                row.add(start, i);
            }
        }
    }
}
