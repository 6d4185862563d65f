// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.Progress;
import org.dutywright.capture.store.ArrowField;
import org.dutywright.capture.store.ArrowFileWriter;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.dutywright.report.internal.CycleBatch;

/**
 * Writes one row a cycle, channel after channel, disturbed cycles included, as an Arrow IPC file with the columns of
 * {@link CyclesCsv}: {@code channel} text, {@code index} a whole number of 64 bits, {@code disturbed} true or false,
 * the others doubles. A batch holds cycles of one channel; memory does not grow with the number of cycles.
 */
public final class CyclesArrow {
    private static final int BATCH_CYCLES = 1 << 16;

    private CyclesArrow() {}

    /**
     * Writes the table and leaves the stream open.
     *
     * @param progress gets one task, in cycles
     */
    public static void write(CaptureMeasurement measurement, OutputStream out, Progress progress) throws IOException {
        List<ArrowField> fields = List.of(CyclesCsv.COLUMNS.split(",", -1)).stream()
                .map(name -> ArrowField.of(name, type(name)))
                .toList();
        ArrowFileWriter writer = ArrowFileWriter.begin(out, fields, Map.of());
        progress.begin(
                "writing cycles",
                measurement.channels().stream()
                        .mapToLong(channel -> channel.cycles().size())
                        .sum());
        for (ChannelMeasurement channel : measurement.channels()) {
            writeChannel(channel, writer, progress);
        }
        writer.finish();
    }

    private static ArrowField.Type type(String name) {
        return switch (name) {
            case "channel" -> ArrowField.Type.TEXT;
            case "index" -> ArrowField.Type.INT64;
            case "disturbed" -> ArrowField.Type.BOOL;
            default -> ArrowField.Type.FLOAT64;
        };
    }

    private static void writeChannel(ChannelMeasurement channel, ArrowFileWriter writer, Progress progress)
            throws IOException {
        long left = channel.cycles().size();
        CycleTable.Cursor cursor = channel.cycles().cursor();
        Cycle cycle = cursor.next();
        while (cycle != null) {
            CycleBatch batch =
                    new CycleBatch(channel.channel().name(), (int) Math.min(BATCH_CYCLES, Math.max(1, left)));
            while (cycle != null && !batch.isFull()) {
                batch.add(cycle);
                cycle = cursor.next();
            }
            left -= batch.count();
            writer.batch(batch.count(), batch.buffers());
            progress.worked(batch.count());
            progress.checkCancelled();
        }
    }
}
