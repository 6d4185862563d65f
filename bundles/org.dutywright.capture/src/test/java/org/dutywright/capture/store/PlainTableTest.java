// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.arrow.memory.RootAllocator;
import org.apache.arrow.vector.FieldVector;
import org.apache.arrow.vector.Float2Vector;
import org.apache.arrow.vector.Float4Vector;
import org.apache.arrow.vector.Float8Vector;
import org.apache.arrow.vector.IntVector;
import org.apache.arrow.vector.TimeStampNanoVector;
import org.apache.arrow.vector.UInt1Vector;
import org.apache.arrow.vector.UInt8Vector;
import org.apache.arrow.vector.VarCharVector;
import org.apache.arrow.vector.VectorSchemaRoot;
import org.apache.arrow.vector.complex.StructVector;
import org.apache.arrow.vector.ipc.ArrowFileWriter;
import org.apache.arrow.vector.types.pojo.ArrowType;
import org.apache.arrow.vector.types.pojo.FieldType;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables that another program wrote: here the Arrow project's own Java library, version 19.0.0. */
final class PlainTableTest {
    private static final ReadSettings RATE = new ReadSettings(OptionalDouble.of(500), List.of(), Map.of());

    private final RootAllocator allocator = new RootAllocator();

    @TempDir
    private Path folder;

    @AfterEach
    void close() {
        allocator.close();
    }

    @Test
    void timeAndUnitsAreFoundInHeadings() throws Exception {
        IntVector time = new IntVector("time_ms", allocator);
        Float4Vector pedal = new Float4Vector("pedal (mV)", allocator);
        UInt1Vector level = new UInt1Vector("level", allocator);
        for (int i = 0; i < 10; i++) {
            time.setSafe(i, i - 2);
            pedal.setSafe(i, 500f * i);
            level.setSafe(i, 200 + i);
        }

        try (Capture capture = Stores.open(written(10, time, pedal, level))) {
            assertThat(capture.channels()).containsExactly(new Channel("pedal", "V"), new Channel("level", "V"));
            assertThat(capture.timeBase().sampleRateHz()).isEqualTo(OptionalDouble.of(1000));
            assertThat(capture.timeBase().secondsAt(0)).isEqualTo(-0.002);
            assertThat(Stores.values(capture, 0)[3]).isEqualTo(1.5);
            assertThat(Stores.values(capture, 1)[3]).isEqualTo(203);
        }
    }

    @Test
    void pointsInTimeCountFromTheFirstRowToTheNanosecond() throws Exception {
        TimeStampNanoVector time = new TimeStampNanoVector("when", allocator);
        Float8Vector value = new Float8Vector("signal1", allocator);
        for (int i = 0; i < 20; i++) {
            // in 2026; as doubles, such stamps lie 256 ns apart
            time.setSafe(i, 1_795_000_000_123_456_789L + 10L * i);
            value.setSafe(i, i);
        }

        try (Capture capture = Stores.open(written(20, time, value))) {
            assertThat(capture.timeBase().sampleRateHz()).isEqualTo(OptionalDouble.of(1e8));
            assertThat(capture.timeBase().secondsAt(0)).isZero();
        }
    }

    @Test
    void rowsWithoutANumberBecomeGaps() throws Exception {
        Float8Vector value = new Float8Vector("signal1", allocator);
        Float2Vector other = new Float2Vector("signal2", allocator);
        for (int i = 0; i < 30; i++) {
            value.setSafe(i, i);
            other.setSafeWithPossibleTruncate(i, i);
        }
        value.setNull(10);
        value.setSafe(11, Double.NaN);
        other.setNull(20);

        try (Capture capture = Stores.open(written(30, value, other), RATE)) {
            assertThat(capture.sampleCount()).isEqualTo(27);
            assertThat(capture.timeBase().segments())
                    .extracting(segment -> segment.startSeconds())
                    .containsExactly(0.0, 12 / 500.0, 21 / 500.0);
            assertThat(capture.guessed()).containsEntry("rows left out", "3, because values are missing");
            assertThat(Stores.values(capture, 1)[10]).isEqualTo(12);
        }
    }

    @Test
    void columnsOfOtherTypesAreLeftOutAndSaidToBe() throws Exception {
        VarCharVector note = new VarCharVector("note", allocator);
        UInt8Vector value = new UInt8Vector("signal1", allocator);
        for (int i = 0; i < 3; i++) {
            note.setSafe(i, new byte[] {'x'});
            value.setSafe(i, -1L);
        }

        try (Capture capture = Stores.open(written(3, note, value), RATE)) {
            assertThat(capture.channels()).containsExactly(new Channel("signal1", "V"));
            assertThat(capture.guessed()).containsEntry("columns left out", "'note' (text)");
            // 2^64 - 1, rounded to a double
            assertThat(Stores.values(capture, 0)).containsExactly(0x1p64, 0x1p64, 0x1p64);
        }
    }

    @Test
    void aTableWithoutTimeNeedsARate() throws Exception {
        Float8Vector value = new Float8Vector("signal1", allocator);
        value.setSafe(0, 1);
        Path file = written(1, value);

        assertThatThrownBy(() -> Stores.open(file))
                .isInstanceOf(UnreadableException.class)
                .hasMessage(file + ": there is no column of time; say how many samples a second there are with"
                        + " --sample-rate, or name the column time_s");
    }

    @Test
    void timeThatGoesBackIsAnErrorWithItsRow() throws Exception {
        Float8Vector time = new Float8Vector("time_s", allocator);
        Float8Vector value = new Float8Vector("signal1", allocator);
        for (int i = 0; i < 9; i++) {
            time.setSafe(i, i == 6 ? 2.5 : i);
            value.setSafe(i, i);
        }
        Path file = written(9, time, value);

        assertThatThrownBy(() -> Stores.open(file))
                .isInstanceOf(UnreadableException.class)
                .hasMessage(file + ", row 7: time goes back from 5.0 s to 2.5 s; split the recording where its time"
                        + " starts anew");
    }

    @Test
    void nestedColumnsAreRefusedByName() throws Exception {
        StructVector struct = StructVector.empty("pair", allocator);
        struct.addOrGet("left", FieldType.nullable(new ArrowType.Int(32, true)), IntVector.class);
        Path file = written(0, struct);

        assertThatThrownBy(() -> Stores.open(file))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("column 'pair' is nested (Struct_), which is not read");
    }

    @Test
    void aTableOfTextsOnlyIsRefused() throws Exception {
        VarCharVector note = new VarCharVector("note", allocator);
        note.setSafe(0, new byte[] {'x'});
        Path file = written(1, note);

        assertThatThrownBy(() -> Stores.open(file))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("holds no column of numbers; not read: 'note' (text)");
    }

    @Test
    void aLongTableGoesThroughATemporaryFile() throws Exception {
        Float8Vector value = new Float8Vector("signal1", allocator);
        int rows = 50_000;
        for (int i = 0; i < rows; i++) {
            value.setSafe(i, i % 17);
        }
        Path file = written(rows, value);

        try (Capture capture = new ArrowCaptureReader(1000).read(file, RATE, Progress.NONE)) {
            double[] values = Stores.values(capture, 0);
            assertThat(values).hasSize(rows);
            for (int i = 0; i < rows; i += 997) {
                assertThat(values[i]).isEqualTo(i % 17);
            }
        }
    }

    private Path written(int rows, FieldVector... vectors) throws IOException {
        Path file = folder.resolve("table.arrow");
        for (FieldVector vector : vectors) {
            vector.setValueCount(rows);
        }
        try (VectorSchemaRoot root = VectorSchemaRoot.of(vectors);
                ArrowFileWriter writer =
                        new ArrowFileWriter(root, null, Channels.newChannel(Files.newOutputStream(file)))) {
            root.setRowCount(rows);
            writer.start();
            writer.writeBatch();
            writer.end();
        }
        return file;
    }
}
