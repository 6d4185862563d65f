// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.mat;

import java.util.Optional;
import org.dutywright.capture.formats.internal.arrays.NumberArray;
import us.hebi.matlab.mat.types.MatlabType;
import us.hebi.matlab.mat.types.Matrix;

/** A matrix, of which the longer dimension counts the samples. */
final class MatArray implements NumberArray {
    private final String path;
    private final Matrix matrix;
    private final int down;
    private final boolean samplesDown;

    private MatArray(String path, Matrix matrix) {
        this.path = path;
        this.matrix = matrix;
        down = matrix.getDimensions()[0];
        samplesDown = down >= matrix.getDimensions()[1];
    }

    /** The array of a matrix; empty if it has more than two dimensions or too many channels. */
    static Optional<NumberArray> of(String path, Matrix matrix) {
        int[] lengths = matrix.getDimensions();
        int across = Math.min(lengths[0], lengths[1]);
        boolean flat = lengths.length == 2 && across >= 1 && across <= MOST_COLUMNS;
        boolean held = flat && (long) lengths[0] * lengths[1] == matrix.getNumElements();
        return held ? Optional.of(new MatArray(path, matrix)) : Optional.empty();
    }

    @Override
    public String path() {
        return path;
    }

    @Override
    public Kind kind() {
        if (matrix.isLogical()) {
            return Kind.COUNT;
        }
        return switch (matrix.getType()) {
            case Double -> Kind.DOUBLE;
            case Single -> Kind.FLOAT;
            case Int8, UInt8, Int16 -> Kind.COUNT;
            default -> Kind.WHOLE;
        };
    }

    @Override
    public long rows() {
        return samplesDown ? down : matrix.getDimensions()[1];
    }

    @Override
    public long heldRows() {
        return rows();
    }

    @Override
    public int columns() {
        return samplesDown ? matrix.getDimensions()[1] : down;
    }

    @Override
    public void read(long firstRow, int count, double[][] target) {
        int first = (int) firstRow;
        for (int column = 0; column < columns(); column++) {
            for (int i = 0; i < count; i++) {
                int row = first + i;
                target[column][i] = value(samplesDown ? column * down + row : row * down + column);
            }
        }
    }

    private double value(int index) {
        double value = matrix.getDouble(index);
        // the library takes all whole numbers as signed
        return value < 0 && matrix.getType() == MatlabType.UInt64 ? value + 0x1p64 : value;
    }
}
