// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.dutywright.capture.Overview.Columns;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OverviewTest {
    private static Capture capture(double[] values) throws IOException {
        return Captures.ofArrays(List.of("a"), List.of("V"), 0, 1000, values);
    }

    private static double[] noise(int count, long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        return random.doubles(count).toArray();
    }

    private static double smallest(double[] values, long from, long to) {
        return Arrays.stream(values, (int) from, (int) to).min().orElseThrow();
    }

    private static double largest(double[] values, long from, long to) {
        return Arrays.stream(values, (int) from, (int) to).max().orElseThrow();
    }

    // windows narrow enough that columns begin at their exact sample: compared with a search over every sample
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 255, 256, 257, 70_000, 3_000_000})
    void columnsHoldTheExtremesOfTheirSamples(int count) throws IOException {
        double[] values = noise(count, count);
        Overview overview = Overview.of(capture(values), 0, Progress.NONE);
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(3);
        for (int round = 0; round < 200; round++) {
            int columns = 1 + random.nextInt(Math.min(count, 500));
            long length = columns + random.nextLong(Math.min(count - columns, 4000L * columns - columns) + 1);
            long first = random.nextLong(count - length + 1);
            Columns found = overview.columns(first, first + length, columns);
            double width = (double) length / columns;
            for (int i = 0; i < columns; i++) {
                long from = first + Math.round(width * i);
                long to = i + 1 == columns ? first + length : first + Math.round(width * (i + 1));
                assertThat(found.min(i)).isEqualTo(smallest(values, from, to));
                assertThat(found.max(i)).isEqualTo(largest(values, from, to));
            }
        }
    }

    @Test
    void aGlitchOfOneSampleShowsAtEveryZoom() throws IOException {
        int count = 5_000_000;
        double[] values = new double[count];
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(11);
        for (int round = 0; round < 5; round++) {
            Arrays.fill(values, 0);
            int glitch = random.nextInt(count);
            values[glitch] = 1;
            Overview overview = Overview.of(capture(values), 0, Progress.NONE);
            for (long length = count; length > 2000; length = length * 2 / 3) {
                long first = Math.max(0, Math.min(count - length, glitch - random.nextLong(length)));
                int columns = (int) Math.min(1900, length);
                Columns found = overview.columns(first, first + length, columns);
                int[] showing = IntStream.range(0, columns)
                        .filter(column -> found.max(column) == 1)
                        .toArray();
                assertThat(showing).as("columns with the glitch").hasSize(1);
                double width = (double) length / columns;
                double middle = (glitch + 0.5 - first) / width;
                // half a column for its width, a tenth and half a sample for where it begins
                assertThat(showing[0] + 0.5).isCloseTo(middle, within(0.5 + 0.1 + 0.5 / width));
            }
        }
    }

    @Test
    void moreColumnsThanSamplesAreRefused() throws IOException {
        Overview overview = Overview.of(capture(new double[10]), 0, Progress.NONE);
        assertThatThrownBy(() -> overview.columns(2, 6, 5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> overview.columns(2, 11, 5)).isInstanceOf(IndexOutOfBoundsException.class);
    }
}
