// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal.arrays;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;

/** Takes rows across arrays, a block at a time. */
final class ArrayRows {
    private static final int MOST_BLOCK_VALUES = 1 << 18;
    private static final int MOST_BLOCK_ROWS = 1 << 13;

    private final Path file;
    private final Optional<Place> time;
    private final double timeFactor;
    private final Place[] columns;
    private final double[] factors;
    private final Map<ScaledArray, double[][]> blocks = new LinkedHashMap<>();
    private final int blockRows;

    /**
     * A column of an array.
     *
     * @param array the array
     * @param column its index
     */
    record Place(ScaledArray array, int column) {}

    ArrayRows(
            Path file, List<Place> places, Optional<Place> time, double timeFactor, List<ColumnChoice.Chosen> chosen) {
        this.file = file;
        this.time = time;
        this.timeFactor = timeFactor;
        columns = chosen.stream().map(one -> places.get(one.column())).toArray(Place[]::new);
        factors = chosen.stream().mapToDouble(ColumnChoice.Chosen::factor).toArray();
        List<ScaledArray> arrays = Stream.concat(Stream.of(columns), time.stream())
                .map(Place::array)
                .distinct()
                .toList();
        int width = arrays.stream().mapToInt(one -> one.array().columns()).sum();
        blockRows = Math.max(1, Math.min(MOST_BLOCK_ROWS, MOST_BLOCK_VALUES / width));
        arrays.forEach(one -> blocks.put(one, new double[one.array().columns()][blockRows]));
    }

    /** The number of rows that all arrays hold. */
    long rows() {
        return blocks.keySet().stream()
                .mapToLong(one -> one.array().heldRows())
                .min()
                .orElseThrow();
    }

    void read(CaptureBuilder builder, Progress progress) throws UnreadableException, IOException {
        long rows = rows();
        double[] row = new double[columns.length];
        StampedRows taken = new StampedRows(file, builder, time.isPresent());
        for (long first = 0; first < rows; first += blockRows) {
            progress.checkCancelled();
            int here = (int) Math.min(blockRows, rows - first);
            for (Map.Entry<ScaledArray, double[][]> entry : blocks.entrySet()) {
                entry.getKey().read(first, here, entry.getValue());
            }
            double[][] values = new double[columns.length][];
            for (int k = 0; k < columns.length; k++) {
                values[k] = blocks.get(columns[k].array())[columns[k].column()];
            }
            for (int i = 0; i < here; i++) {
                boolean complete = true;
                for (int k = 0; k < row.length; k++) {
                    row[k] = values[k][i] * factors[k];
                    complete &= Double.isFinite(row[k]);
                }
                taken.append(row, complete, seconds(i), first + i);
            }
        }
        if (time.isPresent()) {
            switch (time.get().array().array().kind()) {
                case DOUBLE -> taken.doubleStamps();
                case FLOAT -> taken.floatStamps(timeFactor);
                default -> taken.wholeStamps(timeFactor);
            }
        }
    }

    private double seconds(int index) {
        return time.isPresent() ? blocks.get(time.get().array())[time.get().column()][index] * timeFactor : 0;
    }
}
