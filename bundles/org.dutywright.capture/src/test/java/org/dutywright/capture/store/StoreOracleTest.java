// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.arrow.memory.RootAllocator;
import org.apache.arrow.vector.BigIntVector;
import org.apache.arrow.vector.BitVector;
import org.apache.arrow.vector.Float4Vector;
import org.apache.arrow.vector.Float8Vector;
import org.apache.arrow.vector.SmallIntVector;
import org.apache.arrow.vector.VarCharVector;
import org.apache.arrow.vector.VectorSchemaRoot;
import org.apache.arrow.vector.ipc.ArrowFileReader;
import org.apache.arrow.vector.types.pojo.Field;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Channel;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Segment;
import org.dutywright.capture.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written is read by the Arrow project's own Java library, version 19.0.0, as what it is. */
final class StoreOracleTest {
    private static final int ROWS = CaptureStore.BATCH_SAMPLES + 1000;

    @TempDir
    private Path folder;

    /** What is looked at in a batch. */
    @FunctionalInterface
    private interface Batch {
        void look(VectorSchemaRoot root, int firstRow) throws Exception;
    }

    @Test
    void aStoreOfAnEvenCaptureOpensAsVolts() throws Exception {
        double[] steps =
                new Random(1).ints(ROWS, 0, 4096).mapToDouble(i -> i / 256.0).toArray();
        double[] fine = new Random(2).doubles(ROWS, -1, 1).toArray();
        List<Segment> segments = List.of(new Segment(0, 500, -0.25), new Segment(500, ROWS - 500, 7));
        Capture capture = Captures.ofArrays(List.of("signal1", "fine"), List.of("V", "A"), 3e5, segments, steps, fine);

        int rows = read(Stores.write(capture, file()), (root, first) -> {
            Float4Vector signal1 = (Float4Vector) root.getVector("signal1");
            // the smallest distance of random doubles is far below what single precision keeps
            Float8Vector second = (Float8Vector) root.getVector("fine");
            int count = root.getRowCount();
            assertThat(IntStream.range(0, count).mapToDouble(signal1::get).toArray())
                    .isEqualTo(Arrays.copyOfRange(steps, first, first + count));
            assertThat(IntStream.range(0, count).mapToDouble(second::get).toArray())
                    .isEqualTo(Arrays.copyOfRange(fine, first, first + count));
            Map<String, String> metadata = root.getSchema().getCustomMetadata();
            assertThat(metadata)
                    .containsEntry("dutywright.store", "1")
                    .containsEntry("dutywright.time", "even")
                    .containsEntry("dutywright.start_s", "-1/4")
                    .containsEntry("dutywright.step_s", "1/300000")
                    .containsEntry("dutywright.segments", "0 -1/4\n500 7");
            assertThat(root.getSchema().findField("fine").getMetadata()).containsEntry("unit", "A");
        });

        assertThat(rows).isEqualTo(ROWS);
    }

    @Test
    void aStoreOfUnevenStampsHasAColumnOfTime() throws Exception {
        double[] seconds = new Random(3).doubles(3000, -2, 2).sorted().toArray();
        double[] values = new Random(4).ints(3000, 0, 100).mapToDouble(i -> i).toArray();
        Capture capture = Captures.ofStampedArrays(List.of("signal1"), List.of("V"), seconds, values);

        int rows = read(Stores.write(capture, file()), (root, first) -> {
            Float8Vector time = (Float8Vector) root.getVector("time_s");
            Float4Vector signal1 = (Float4Vector) root.getVector("signal1");
            for (int i = 0; i < root.getRowCount(); i++) {
                assertThat(time.get(i)).isEqualTo(seconds[i]);
                assertThat((double) signal1.get(i)).isEqualTo(values[i]);
            }
        });

        assertThat(rows).isEqualTo(3000);
    }

    @Test
    void countsStandInAColumnOfTheirOwnNameWithScaleAndOffset() throws Exception {
        CountScale scale = new CountScale(0.25, -3);
        try (CaptureBuilder builder = CaptureBuilder.even(List.of(new Channel("signal1", "V")), 0, 1e4)) {
            builder.counts(0, scale);
            for (int count = -50; count < 50; count++) {
                builder.append(new double[] {scale.valueOf(count)});
            }
            try (Capture capture =
                    builder.finish(new Source(Path.of("a.wav"), Stores.SHA256), Map.of(), Progress.NONE)) {
                int rows = read(Stores.write(capture, file()), (root, first) -> {
                    SmallIntVector counts = (SmallIntVector) root.getVector("signal1_counts");
                    for (int i = 0; i < 100; i++) {
                        assertThat(counts.get(i)).isEqualTo((short) (i - 50));
                    }
                    Field field = counts.getField();
                    assertThat(field.getMetadata())
                            .containsEntry("scale", "0.25")
                            .containsEntry("offset", "-3.0")
                            .containsEntry("unit", "V")
                            .containsEntry("channel", "signal1");
                    assertThat(root.getSchema().getCustomMetadata())
                            .containsEntry("dutywright.sources", Stores.SHA256 + " a.wav");
                });
                assertThat(rows).isEqualTo(100);
            }
        }
    }

    @Test
    void anEmptyStoreIsAnEmptyTable() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ArrowFileWriter.begin(bytes, List.of(ArrowField.of("signal1", ArrowField.Type.FLOAT32)), Map.of())
                .finish();
        Files.write(file(), bytes.toByteArray());

        assertThat(read(file(), (root, first) -> {})).isZero();
    }

    @Test
    void textsTruthsAndWholeNumbersOfATableAreRead() throws Exception {
        List<ArrowField> fields = List.of(
                ArrowField.of("name", ArrowField.Type.TEXT),
                ArrowField.of("index", ArrowField.Type.INT64),
                ArrowField.of("flag", ArrowField.Type.BOOL));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ArrowFileWriter writer = ArrowFileWriter.begin(bytes, fields, Map.of());
        // offsets 0, 2, 3 and the texts "µ" (two bytes) and "V"; -1 and 2; true, then false
        writer.batch(
                2,
                List.of(
                        ArrowFileWriter.Buffer.of(new byte[] {0, 0, 0, 0, 2, 0, 0, 0, 3, 0, 0, 0}),
                        ArrowFileWriter.Buffer.of(new byte[] {(byte) 0xC2, (byte) 0xB5, 'V'}),
                        ArrowFileWriter.Buffer.of(new byte[] {-1, -1, -1, -1, -1, -1, -1, -1, 2, 0, 0, 0, 0, 0, 0, 0}),
                        ArrowFileWriter.Buffer.of(new byte[] {1})));
        writer.finish();
        Files.write(file(), bytes.toByteArray());

        int rows = read(file(), (root, first) -> {
            assertThat(((VarCharVector) root.getVector("name")).getObject(0)).hasToString("µ");
            assertThat(((VarCharVector) root.getVector("name")).getObject(1)).hasToString("V");
            assertThat(((BigIntVector) root.getVector("index")).get(0)).isEqualTo(-1);
            assertThat(((BigIntVector) root.getVector("index")).get(1)).isEqualTo(2);
            assertThat(((BitVector) root.getVector("flag")).get(0)).isEqualTo(1);
            assertThat(((BitVector) root.getVector("flag")).get(1)).isZero();
        });

        assertThat(rows).isEqualTo(2);
    }

    private Path file() {
        return folder.resolve("capture.arrow");
    }

    private static int read(Path file, Batch batch) throws Exception {
        int rows = 0;
        try (RootAllocator allocator = new RootAllocator();
                FileChannel channel = FileChannel.open(file);
                ArrowFileReader reader = new ArrowFileReader(channel, allocator)) {
            while (reader.loadNextBatch()) {
                batch.look(reader.getVectorSchemaRoot(), rows);
                rows += reader.getVectorSchemaRoot().getRowCount();
            }
        }
        return rows;
    }
}
