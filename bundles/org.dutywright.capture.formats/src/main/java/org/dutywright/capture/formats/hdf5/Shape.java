// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import java.util.Optional;
import org.dutywright.capture.formats.internal.arrays.NumberArray;

/**
 * How the elements of a dataset lie: the longer of two dimensions counts the samples.
 *
 * @param rows number of samples
 * @param columns number of channels
 * @param rowsTogether whether the channels of one sample lie side by side
 * @param dimensions one or two of them, as in the file
 */
record Shape(long rows, int columns, boolean rowsTogether, int dimensions) {

    /** The shape of so many dimensions; empty if there are more than two, or too many channels. */
    static Optional<Shape> of(long[] lengths) {
        if (lengths.length == 1 && lengths[0] >= 0) {
            return Optional.of(new Shape(lengths[0], 1, true, 1));
        }
        if (lengths.length != 2 || lengths[0] < 0 || lengths[1] < 0) {
            return Optional.empty();
        }
        boolean rowsTogether = lengths[0] >= lengths[1];
        long columns = Math.min(lengths[0], lengths[1]);
        if (columns < 1 || columns > NumberArray.MOST_COLUMNS) {
            return Optional.empty();
        }
        return Optional.of(new Shape(Math.max(lengths[0], lengths[1]), (int) columns, rowsTogether, 2));
    }

    /** The place of an element among all. */
    long index(long row, int column) {
        return rowsTogether ? row * columns + column : column * rows + row;
    }
}
