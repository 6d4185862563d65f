// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;

/**
 * Writes one row a cycle, channel after channel, disturbed cycles included. Comma, decimal point, CRLF and quotes as
 * in RFC 4180; numbers are the shortest decimals that read back as the same double; {@code disturbed} is
 * {@code true} or {@code false}. Memory does not grow with the number of cycles.
 */
public final class CyclesCsv {
    /** The heading. */
    public static final String COLUMNS =
            "channel,index,start_s,period_s,frequency_hz,pulse_duration_s,duty_percent,mean_v,disturbed";

    private static final String LINE_END = "\r\n";
    private static final int CYCLES_PER_CHECK = 4096;

    private CyclesCsv() {}

    /**
     * Writes the table and leaves the stream open.
     *
     * @param progress gets one task, in cycles
     */
    public static void write(CaptureMeasurement measurement, OutputStream out, Progress progress) throws IOException {
        Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), 1 << 16);
        writer.append(COLUMNS).append(LINE_END);
        progress.begin(
                "writing cycles",
                measurement.channels().stream()
                        .mapToLong(channel -> channel.cycles().size())
                        .sum());
        for (ChannelMeasurement channel : measurement.channels()) {
            writeChannel(channel, writer, progress);
        }
        writer.flush();
    }

    private static void writeChannel(ChannelMeasurement channel, Writer writer, Progress progress) throws IOException {
        String name = quoted(channel.channel().name());
        CycleTable.Cursor cursor = channel.cycles().cursor();
        StringBuilder row = new StringBuilder(160);
        int sinceCheck = 0;
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            row.setLength(0);
            append(row, name, cycle);
            writer.append(row);
            if (++sinceCheck == CYCLES_PER_CHECK) {
                progress.worked(sinceCheck);
                progress.checkCancelled();
                sinceCheck = 0;
            }
        }
        progress.worked(sinceCheck);
    }

    private static void append(StringBuilder row, String name, Cycle cycle) {
        row.append(name).append(',').append(cycle.index());
        number(row, cycle.startSeconds());
        number(row, cycle.periodSeconds());
        number(row, cycle.frequencyHz());
        number(row, cycle.pulseDurationSeconds());
        number(row, cycle.dutyPercent());
        number(row, cycle.mean());
        row.append(',').append(cycle.disturbed()).append(LINE_END);
    }

    private static void number(StringBuilder row, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalStateException("a cycle has the number " + value);
        }
        row.append(',').append(value);
    }

    private static String quoted(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
