// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.export;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Progress;

/** Writes a text table; its numbers are the shortest decimals that read as the same double. */
final class TextWriter implements CaptureWriter {
    private static final String LINE_END = "\r\n";
    private static final int BUFFER_CHARS = 1 << 16;

    @Override
    public String ending() {
        return ".csv";
    }

    @Override
    public Prepared prepare(Capture capture, Map<String, String> settings, Progress progress) {
        return new Prepared(stream -> write(capture, stream, progress), List.of());
    }

    private static void write(Capture capture, OutputStream stream, Progress progress) throws IOException {
        Writer writer = new BufferedWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), BUFFER_CHARS);
        writer.append("time (s)");
        for (Channel channel : capture.channels()) {
            writer.append(',').append(quoted(Names.withUnit(channel)));
        }
        writer.append(LINE_END);
        RowBlocks rows = RowBlocks.of(capture, "writing text", progress);
        StringBuilder line = new StringBuilder();
        while (rows.next()) {
            double[] seconds = rows.seconds();
            for (int row = 0; row < rows.count(); row++) {
                line.setLength(0);
                line.append(seconds[row]);
                for (double[] channel : rows.values()) {
                    line.append(',').append(channel[row]);
                }
                writer.append(line.append(LINE_END));
            }
        }
        writer.flush();
    }

    private static String quoted(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == ';' || c == '"' || Character.isISOControl(c));
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
