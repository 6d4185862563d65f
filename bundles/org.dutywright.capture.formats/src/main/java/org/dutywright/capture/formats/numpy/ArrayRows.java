// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.numpy;

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
import org.dutywright.capture.formats.internal.ElementType;
import org.dutywright.capture.formats.internal.arrays.StampedRows;

/** Takes rows across arrays, a block at a time. */
final class ArrayRows {
    private static final int MOST_BLOCK_VALUES = 1 << 20;

    private final Path file;
    private final Optional<ArrayColumn> time;
    private final double timeFactor;
    private final ColumnChoice.Chosen[] chosen;
    private final ArrayColumn[] columns;
    private final Map<ArrayData, double[][]> blocks = new LinkedHashMap<>();
    private final int blockRows;

    ArrayRows(
            Path file,
            List<ArrayColumn> places,
            Optional<ArrayColumn> time,
            double timeFactor,
            List<ColumnChoice.Chosen> chosen) {
        this.file = file;
        this.time = time;
        this.timeFactor = timeFactor;
        this.chosen = chosen.toArray(ColumnChoice.Chosen[]::new);
        columns = chosen.stream().map(one -> places.get(one.column())).toArray(ArrayColumn[]::new);
        List<ArrayData> arrays = Stream.concat(Stream.of(columns), time.stream())
                .map(ArrayColumn::array)
                .distinct()
                .toList();
        int width = arrays.stream().mapToInt(ArrayData::columns).sum();
        int most = arrays.stream().mapToInt(ArrayData::blockRows).min().orElseThrow();
        blockRows = Math.max(1, Math.min(most, MOST_BLOCK_VALUES / width));
        arrays.forEach(array -> blocks.put(array, new double[array.columns()][blockRows]));
    }

    void read(long rows, CaptureBuilder builder, Progress progress) throws UnreadableException, IOException {
        double[] row = new double[chosen.length];
        StampedRows taken = new StampedRows(file, builder, time.isPresent());
        for (long first = 0; first < rows; first += blockRows) {
            progress.checkCancelled();
            int here = (int) Math.min(blockRows, rows - first);
            for (Map.Entry<ArrayData, double[][]> entry : blocks.entrySet()) {
                entry.getKey().read(first, here, entry.getValue());
            }
            for (int i = 0; i < here; i++) {
                boolean complete = true;
                for (int k = 0; k < row.length; k++) {
                    row[k] = value(columns[k], i) * chosen[k].factor();
                    complete &= Double.isFinite(row[k]);
                }
                taken.append(row, complete, time.isPresent() ? value(time.get(), i) * timeFactor : 0, first + i);
            }
        }
        time.ifPresent(column -> resolution(taken, column.array().header().typeOf(column.index())));
    }

    private void resolution(StampedRows taken, ElementType type) {
        if (!type.isFloat()) {
            taken.wholeStamps(timeFactor);
        } else if (type.bytes() == Double.BYTES) {
            taken.doubleStamps();
        } else {
            taken.floatStamps(timeFactor);
        }
    }

    private double value(ArrayColumn column, int index) {
        return blocks.get(column.array())[column.index()][index];
    }
}
