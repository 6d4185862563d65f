// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.dutywright.capture.Overview.Columns;
import org.junit.jupiter.api.Test;

/** The oracle searches every sample. */
class BlockExtremesTest {
    private static final int MOST_BLOCKS = 1 << 10;

    @Test
    void blocks_hold_the_extremes_of_their_samples_however_many_became_one() {
        Random random = new Random(20261125);
        for (int count : new int[] {1, 255, 256, 257, 262_144, 262_145, 700_000, 3_000_000}) {
            double[] values = random.doubles(count).toArray();
            BlockExtremes extremes = new BlockExtremes(MOST_BLOCKS);
            for (int from = 0; from < count; ) {
                int part = Math.min(count - from, random.nextInt(5000));
                if (part == 1) {
                    extremes.add(values[from]);
                } else {
                    extremes.add(Arrays.copyOfRange(values, from, from + part), part);
                }
                from += part;
            }
            int size = (int) extremes.samplesPerBlock();
            assertThat(extremes.count()).isEqualTo(Math.ceilDiv(count, size)).isLessThanOrEqualTo(MOST_BLOCKS);
            for (int block = 0; block < extremes.count(); block++) {
                int end = Math.min(count, (block + 1) * size);
                assertThat(extremes.min(block))
                        .isEqualTo(
                                Arrays.stream(values, block * size, end).min().orElseThrow());
                assertThat(extremes.max(block))
                        .isEqualTo(
                                Arrays.stream(values, block * size, end).max().orElseThrow());
            }
        }
    }

    @Test
    void many_channels_share_the_memory_of_few() {
        BlockExtremes one = BlockExtremes.ofOneOf(1);
        BlockExtremes many = BlockExtremes.ofOneOf(1000);
        double[] flat = new double[1 << 21];
        one.add(flat, flat.length);
        many.add(flat, flat.length);
        assertThat(one.count()).isEqualTo(8192);
        assertThat(many.count()).isEqualTo(4096);
    }

    @Test
    void a_glitch_of_one_sample_shows_at_every_level_of_a_capture_that_was_summed_up_while_it_was_read()
            throws Exception {
        int count = 5_000_000;
        int piece = 10_000;
        Random random = new Random(17);
        double[] values = new double[count];
        for (int round = 0; round < 4; round++) {
            int glitch = random.nextInt(count);
            values[glitch] = round % 2 == 0 ? 1 : -1;
            try (CaptureBuilder builder = CaptureBuilder.even(List.of(new Channel("a", "V")), 0, 1000)) {
                for (int from = 0; from < count; from += piece) {
                    builder.append(new double[][] {Arrays.copyOfRange(values, from, from + piece)}, piece);
                }
                try (Capture capture = builder.finish(new Source(Path.of("a"), ""), Map.of(), Progress.NONE)) {
                    assertThat(capture.samples().extremes(0)).isPresent();
                    Overview gathered = Overview.of(capture, 0, Progress.NONE);
                    for (long length = count; length > 100; length = length * 3 / 5) {
                        long first = Math.max(0, Math.min(count - length, glitch - random.nextLong(length)));
                        int columns = (int) Math.min(1500, length);
                        Columns found = gathered.columns(first, first + length, columns);
                        long showing = 0;
                        for (int i = 0; i < columns; i++) {
                            showing += found.min(i) != found.max(i) || found.max(i) != 0 ? 1 : 0;
                        }
                        assertThat(showing)
                                .as("columns that show sample " + glitch)
                                .isEqualTo(1);
                    }
                }
            }
            values[glitch] = 0;
        }
    }
}
