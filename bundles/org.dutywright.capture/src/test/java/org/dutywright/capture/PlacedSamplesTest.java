// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The oracle takes the same rows one by one. */
class PlacedSamplesTest {
    private static final int HEADER = 10;
    private static final int CHANNELS = 3;
    private static final List<Channel> NAMES =
            List.of(new Channel("a", "V"), new Channel("b", "V"), new Channel("c", "V"));
    private static final PlacedSamples.Decoder FLOATS = (bytes, stride, target, offset, count) -> {
        for (int i = 0; i < count; i++) {
            target[offset + i] = bytes.getFloat(i * stride);
        }
    };

    @TempDir
    Path folder;

    private Path file(float[][] rows) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(HEADER + rows.length * CHANNELS * Float.BYTES)
                .order(ByteOrder.BIG_ENDIAN);
        bytes.position(HEADER);
        for (float[] row : rows) {
            for (float value : row) {
                bytes.putFloat(value);
            }
        }
        return Files.write(folder.resolve("rows"), bytes.array());
    }

    private static PlacedSamples open(Path file, int rows) throws IOException {
        List<PlacedSamples.Column> columns = List.of(column(0), column(1), column(2));
        return PlacedSamples.open(file, rows, columns);
    }

    private static PlacedSamples.Column column(int index) {
        return new PlacedSamples.Column(
                HEADER + (long) index * Float.BYTES, CHANNELS * Float.BYTES, Float.BYTES, ByteOrder.BIG_ENDIAN, FLOATS);
    }

    private static float[][] rows(int count, int missing, Random random) {
        float[][] rows = new float[count][CHANNELS];
        for (float[] row : rows) {
            for (int i = 0; i < CHANNELS; i++) {
                row[i] = random.nextFloat() - 0.5f;
            }
        }
        for (int i = 0; i < missing; i++) {
            float[] spoiled = rows[random.nextInt(count)];
            spoiled[random.nextInt(CHANNELS)] = random.nextBoolean() ? Float.NaN : Float.NEGATIVE_INFINITY;
        }
        return rows;
    }

    @Test
    void rows_read_in_place_are_those_that_were_copied_and_what_is_no_number_leaves_a_gap() throws Exception {
        Random random = new Random(20261125);
        for (int trial = 0; trial < 12; trial++) {
            int count = 2 + random.nextInt(150_000);
            float[][] rows = rows(count, trial % 3 == 0 ? 0 : random.nextInt(40), random);
            PlacedSamples samples = open(file(rows), count);
            try (CaptureBuilder placed = CaptureBuilder.even(NAMES, 2, 1000, 0);
                    CaptureBuilder copied = CaptureBuilder.even(NAMES, 2, 1000, 0)) {
                placed.place(samples);
                for (int left = count; left > 0; ) {
                    int part = Math.min(left, random.nextInt(50_000));
                    placed.takePlaced(part);
                    left -= part;
                }
                for (float[] row : rows) {
                    appendOrLeaveOut(copied, row);
                }
                assertAlike(placed, copied);
            }
        }
    }

    private static void appendOrLeaveOut(CaptureBuilder builder, float[] row) throws IOException {
        if (Float.isFinite(row[0]) && Float.isFinite(row[1]) && Float.isFinite(row[2])) {
            builder.append(new double[] {row[0], row[1], row[2]});
        } else {
            builder.leaveOut();
        }
    }

    private static void assertAlike(CaptureBuilder placed, CaptureBuilder copied) throws Exception {
        Source source = new Source(Path.of("rows"), "");
        assertThat(placed.leftOutCount()).isEqualTo(copied.leftOutCount());
        try (Capture actual = placed.finish(source, Map.of(), Progress.NONE);
                Capture expected = copied.finish(source, Map.of(), Progress.NONE)) {
            assertThat(actual.timeBase().segments())
                    .isEqualTo(expected.timeBase().segments());
            for (int channel = 0; channel < CHANNELS; channel++) {
                assertThat(values(actual, channel)).isEqualTo(values(expected, channel));
                BlockExtremes gathered = actual.samples().extremes(channel).orElseThrow();
                BlockExtremes oracle = expected.samples().extremes(channel).orElseThrow();
                assertThat(gathered.count()).isEqualTo(oracle.count());
                for (int block = 0; block < gathered.count(); block++) {
                    assertThat(gathered.min(block)).isEqualTo(oracle.min(block));
                    assertThat(gathered.max(block)).isEqualTo(oracle.max(block));
                }
            }
        }
    }

    private static double[] values(Capture capture, int channel) throws IOException {
        double[] values = new double[(int) capture.sampleCount()];
        capture.samples().read(channel, 0, values, 0, values.length);
        return values;
    }

    @Test
    void a_file_that_becomes_shorter_is_an_error() throws Exception {
        Path file = file(rows(100, 0, new Random(1)));
        try (PlacedSamples samples = open(file, 100)) {
            Files.write(file, new byte[200]);
            double[] values = new double[100];
            assertThatThrownBy(() -> samples.read(0, 0, values, 0, 100))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("became shorter");
            assertThatThrownBy(() -> samples.read(0, 1, values, 0, 100)).isInstanceOf(IndexOutOfBoundsException.class);
        }
    }

    @Test
    void a_builder_that_is_not_finished_closes_the_file() throws Exception {
        PlacedSamples samples = open(file(rows(100, 0, new Random(1))), 100);
        try (CaptureBuilder builder = CaptureBuilder.even(NAMES, 0, 1000)) {
            builder.place(samples);
        }
        assertThatThrownBy(() -> samples.read(0, 0, new double[1], 0, 1))
                .isInstanceOf(java.nio.channels.ClosedChannelException.class);
    }
}
