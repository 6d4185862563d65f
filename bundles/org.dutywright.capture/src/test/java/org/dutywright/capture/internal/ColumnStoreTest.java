// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.Random;
import org.dutywright.capture.Samples;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ColumnStoreTest {
    private static ColumnStore fill(ColumnStore store, double[][] rows) throws IOException {
        for (double[] row : rows) {
            store.append(row);
        }
        store.finish();
        return store;
    }

    private static double[][] randomRows(Random random, int rows, int columns) {
        double[][] values = new double[rows][columns];
        for (double[] row : values) {
            for (int i = 0; i < columns; i++) {
                row[i] = random.nextGaussian();
            }
        }
        return values;
    }

    // rows around the border of a page (16384 rows of few columns), more than one, and none
    @ParameterizedTest
    @CsvSource({"0,2", "1,1", "16383,2", "16384,3", "16385,1", "50000,3", "20,2000"})
    void aStoreInAFileGivesWhatOneOnTheHeapGives(int rowCount, int columns) throws IOException {
        Random random = new Random(20261125L + rowCount);
        double[][] rows = randomRows(random, rowCount, columns);
        try (ColumnStore heap = fill(new ColumnStore(columns, Long.MAX_VALUE), rows);
                ColumnStore file = fill(new ColumnStore(columns, 0), rows)) {
            assertThat(heap.sampleCount()).isEqualTo(rowCount);
            assertThat(file.sampleCount()).isEqualTo(rowCount);
            for (int trial = 0; trial < 200; trial++) {
                int column = random.nextInt(columns);
                int first = random.nextInt(rowCount + 1);
                int count = random.nextInt(rowCount - first + 1);
                double[] expected = new double[count];
                for (int i = 0; i < count; i++) {
                    expected[i] = rows[first + i][column];
                }
                assertThat(read(heap, column, first, count)).isEqualTo(expected);
                assertThat(read(file, column, first, count)).isEqualTo(expected);
            }
        }
    }

    private static double[] read(Samples samples, int column, int first, int count) throws IOException {
        double[] target = new double[count + 1];
        samples.read(column, first, target, 1, count);
        return java.util.Arrays.copyOfRange(target, 1, count + 1);
    }

    @ParameterizedTest
    @ValueSource(longs = {0, Long.MAX_VALUE})
    void whatIsOutsideOrClosedIsRefused(long heapValues) throws IOException {
        ColumnStore store = fill(new ColumnStore(1, heapValues), new double[][] {{1}, {2}});
        assertThatThrownBy(() -> read(store, 0, 1, 2)).isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> read(store, 1, 0, 1)).isInstanceOf(IndexOutOfBoundsException.class);
        store.close();
        store.close();
        assertThatThrownBy(() -> read(store, 0, 0, 1)).isInstanceOf(IOException.class);
    }
}
