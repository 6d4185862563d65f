// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/** Data as text: one record a line, its fields separated by commas. */
final class AsciiRecords {
    private static final double MISSING = 99999;
    private static final int FIRST_WITH_MISSING = 1999;

    private final ByteSource source;
    private final LineSource lines;
    private final Config config;
    private final double[] fields;
    private int count;

    AsciiRecords(ByteSource source, LineSource lines, Config config) {
        this.source = source;
        this.lines = lines;
        this.config = config;
        fields = new double[2 + config.columns()];
    }

    void read(RecordTaker taker) throws UnreadableException, IOException {
        double[] values = new double[config.columns()];
        while (!taker.isComplete() && lines.next()) {
            if (isEmpty()) {
                continue;
            }
            if (CombinedFile.partOf(start()).isPresent()) {
                return;
            }
            if (!split()) {
                // the last line of a file that was cut off
                return;
            }
            for (int i = 0; i < values.length; i++) {
                double value = fields[2 + i];
                boolean analog = i < config.analogs().size();
                boolean missing = analog && value == MISSING && config.revision() >= FIRST_WITH_MISSING;
                values[i] = missing ? Double.NaN : value;
            }
            taker.take(fields[0], fields[1], values, "line", lines.number());
        }
    }

    private boolean isEmpty() {
        for (int i = 0; i < lines.length(); i++) {
            if (lines.bytes()[i] > ' ' || lines.bytes()[i] < 0) {
                return false;
            }
        }
        return true;
    }

    private String start() {
        return lines.bytes()[0] == '-' && lines.length() > 1 && lines.bytes()[1] == '-' ? lines.text() : "";
    }

    /** Reads the fields; false if the line is the last and was cut off. */
    private boolean split() throws UnreadableException {
        byte[] bytes = lines.bytes();
        int from = 0;
        count = 0;
        for (int i = 0; i <= lines.length(); i++) {
            if (i < lines.length() && bytes[i] != ',') {
                continue;
            }
            if (count < fields.length) {
                fields[count] = field(from, i);
            } else if (i > from && !new String(bytes, from, i - from, StandardCharsets.ISO_8859_1).isBlank()) {
                throw broken("has more than " + fields.length + " fields");
            }
            count++;
            from = i + 1;
        }
        if (count < fields.length && lines.terminated()) {
            throw broken("has " + count + " fields instead of " + fields.length);
        }
        return count >= fields.length;
    }

    private double field(int start, int end) throws UnreadableException {
        byte[] bytes = lines.bytes();
        int from = start;
        int to = end;
        while (from < to && bytes[from] <= ' ' && bytes[from] >= 0) {
            from++;
        }
        while (to > from && bytes[to - 1] <= ' ' && bytes[to - 1] >= 0) {
            to--;
        }
        if (from == to) {
            return Double.NaN;
        }
        try {
            return JavaDoubleParser.parseDouble(bytes, from, to - from);
        } catch (NumberFormatException e) {
            String text = new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
            throw broken("holds '" + LineSource.quote(text) + "', which is no number, in field " + (count + 1));
        }
    }

    private UnreadableException broken(String problem) {
        return new UnreadableException(
                source.file(), "line " + lines.number(), "the line " + problem, "export the record again");
    }
}
