// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.apache.arrow.memory.RootAllocator;
import org.apache.arrow.vector.FieldVector;
import org.apache.arrow.vector.VectorSchemaRoot;
import org.apache.arrow.vector.ipc.ArrowFileReader;
import org.apache.arrow.vector.util.ByteArrayReadableSeekableByteChannel;
import org.apache.arrow.vector.util.Text;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.Cycle;
import org.junit.jupiter.api.Test;

/** The table of cycles as the Arrow project's own Java library, version 19.0.0, reads it. */
final class CyclesArrowTest {
    @Test
    void eachCycleIsARowWithTheColumnsOfTheTextTable() throws Exception {
        List<List<Object>> rows = rows(Examples.measurement());

        assertThat(rows.get(0)).isEqualTo(List.of((Object[]) CyclesCsv.COLUMNS.split(",", -1)));
        // as CyclesCsvTest has them
        assertThat(rows.get(1)).isEqualTo(List.of("signal1", 0L, -0.0999, 0.005, 200.0, 5.0E-4, 10.0, 1.58, false));
        assertThat(rows.get(2)).isEqualTo(List.of("signal1", 1L, -0.0949, 0.01, 100.0, 5.0E-4, 5.0, 0.97, true));
        assertThat(rows.get(3))
                .isEqualTo(List.of(
                        "signal1", 2L, 0.41, 0.1 + 0.2, 1 / (0.1 + 0.2), 0.1, 100 * 0.1 / (0.1 + 0.2), 1.6, false));
        assertThat(rows).hasSize(4);
    }

    @Test
    void manyCyclesGoThroughSeveralBatches() throws Exception {
        int count = 150_000;
        List<Cycle> cycles = LongStream.range(0, count)
                .mapToObj(i -> new Cycle(i, i * 0.005, 0.005, 0.001, 2, i % 3 == 0))
                .toList();

        List<List<Object>> rows = rows(Examples.measurement(List.of(
                Examples.withCycles("µ-signal", cycles), Examples.withCycles("signal2", cycles.subList(0, 10)))));

        assertThat(rows).hasSize(1 + count + 10);
        for (int i : new int[] {0, 65_535, 65_536, count - 1}) {
            assertThat(rows.get(1 + i).get(0)).isEqualTo("µ-signal");
            assertThat(rows.get(1 + i).get(1)).isEqualTo((long) i);
            assertThat(rows.get(1 + i).get(2)).isEqualTo(i * 0.005);
            assertThat(rows.get(1 + i).get(8)).isEqualTo(i % 3 == 0);
        }
        assertThat(rows.get(count + 10).get(0)).isEqualTo("signal2");
        assertThat(rows.get(count + 10).get(1)).isEqualTo(9L);
    }

    private static List<List<Object>> rows(CaptureMeasurement measurement) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        CyclesArrow.write(measurement, out, Progress.NONE);
        List<List<Object>> rows = new ArrayList<>();
        try (RootAllocator allocator = new RootAllocator();
                ArrowFileReader reader =
                        new ArrowFileReader(new ByteArrayReadableSeekableByteChannel(out.toByteArray()), allocator)) {
            VectorSchemaRoot root = reader.getVectorSchemaRoot();
            rows.add(root.getFieldVectors().stream()
                    .<Object>map(FieldVector::getName)
                    .toList());
            while (reader.loadNextBatch()) {
                for (int i = 0; i < root.getRowCount(); i++) {
                    int row = i;
                    rows.add(root.getFieldVectors().stream()
                            .map(vector -> vector.getObject(row))
                            .<Object>map(value -> value instanceof Text ? value.toString() : value)
                            .toList());
                }
            }
        }
        return rows;
    }
}
