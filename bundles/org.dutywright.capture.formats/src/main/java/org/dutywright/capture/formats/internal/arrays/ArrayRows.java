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
    private double lastSeconds = Double.NEGATIVE_INFINITY;

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
                append(builder, row, complete, i, first + i);
            }
        }
        if (time.isPresent()) {
            builder.stampResolution(resolutionSeconds(time.get().array().array().kind()));
        }
    }

    /** What the type of the time stamps can tell apart at the end. */
    private double resolutionSeconds(NumberArray.Kind kind) {
        return switch (kind) {
            case DOUBLE -> 0;
            case FLOAT -> lastSeconds < 0 ? 0 : Math.ulp((float) (lastSeconds / timeFactor)) * timeFactor;
            default -> timeFactor;
        };
    }

    private void append(CaptureBuilder builder, double[] row, boolean complete, int index, long number)
            throws UnreadableException, IOException {
        double seconds =
                time.isPresent() ? blocks.get(time.get().array())[time.get().column()][index] * timeFactor : 0;
        if (!complete || !Double.isFinite(seconds)) {
            builder.leaveOut();
        } else if (time.isEmpty()) {
            builder.append(row);
        } else if (seconds < lastSeconds) {
            throw new UnreadableException(
                    file,
                    "row " + number,
                    "time goes back from " + lastSeconds + " s to " + seconds + " s",
                    "split the recording where its time starts anew");
        } else {
            lastSeconds = seconds;
            builder.append(seconds, row);
        }
    }
}
