// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.Arrays;
import java.util.Random;
import org.dutywright.pulse.MedianSketch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpillAndMedianTest {
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 1637, 1638, 1639, 52_416, 52_417, 200_000})
    void a_spill_gives_back_what_was_added_in_any_order(int records) throws IOException {
        try (RecordSpill spill = new RecordSpill(5)) {
            for (int i = 0; i < records; i++) {
                spill.add(i, i + 0.25, -i, i * 1e-9, i % 2);
            }
            assertThat(spill.size()).isEqualTo(records);
            RecordSpill.Cursor cursor = spill.cursor();
            RecordSpill.Cursor other = spill.cursor();
            double[] record = new double[5];
            Random random = new Random(records);
            for (int i = 0; i < records; i++) {
                cursor.read(i, record);
                assertThat(record[0]).isEqualTo(i);
                if (i % 1000 == 0) {
                    int any = random.nextInt(records);
                    other.read(any, record);
                    assertThat(record).containsExactly(any, any + 0.25, -any, any * 1e-9, any % 2);
                }
            }
            assertThatThrownBy(() -> cursor.read(records, record)).isInstanceOf(IndexOutOfBoundsException.class);
        }
    }

    private static double exactMedian(double[] values) throws IOException {
        return ExactMedian.of(sink -> {
            for (double value : values) {
                sink.take(value);
            }
        });
    }

    private static double sorted(double[] values) {
        double[] copy = values.clone();
        Arrays.sort(copy);
        return (copy[(copy.length - 1) / 2] + copy[copy.length / 2]) / 2;
    }

    @Test
    void the_exact_median_is_that_of_the_sorted_values() throws IOException {
        Random random = new Random(4);
        for (int length : new int[] {1, 2, 3, 4, 7, 100, 101, 5000}) {
            double[] spread =
                    random.doubles(length).map(it -> Math.exp(20 * it - 10)).toArray();
            assertThat(exactMedian(spread)).isEqualTo(sorted(spread));
            double[] close = random.doubles(length).map(it -> 5e-3 + 1e-15 * it).toArray();
            assertThat(exactMedian(close)).isEqualTo(sorted(close));
            double[] few = random.doubles(length).map(it -> Math.rint(3 * it)).toArray();
            assertThat(exactMedian(few)).isEqualTo(sorted(few));
        }
        assertThat(exactMedian(new double[0])).isNaN();
    }

    @Test
    void the_sketch_is_exact_for_few_values_and_close_for_many() {
        Random random = new Random(6);
        MedianSketch sketch = new MedianSketch();
        double[] values = new double[300_000];
        for (int i = 0; i < values.length; i++) {
            values[i] = 80e-6 * (1 + 0.1 * random.nextGaussian());
            sketch.add(values[i]);
            if (i == 60_000 || i == 10) {
                assertThat(sketch.median()).isEqualTo(sorted(Arrays.copyOf(values, i + 1)));
            }
        }
        assertThat(sketch.median()).isCloseTo(sorted(values), within(1e-4 * 80e-6));
        assertThat(new MedianSketch().median()).isNaN();
    }
}
