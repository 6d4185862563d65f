// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.numpy;

import java.io.IOException;

/**
 * One column of an array.
 *
 * @param array the array
 * @param index of the column
 */
record ArrayColumn(ArrayData array, int index) {

    /** Whether each of the first rows, at most so many, is above the one before. */
    boolean rises(int most) throws IOException {
        long count = Math.min(most, array.rows());
        double[][] block = new double[array.columns()][array.blockRows()];
        double before = Double.NEGATIVE_INFINITY;
        for (long first = 0; first < count; first += array.blockRows()) {
            int here = (int) Math.min(array.blockRows(), count - first);
            array.read(first, here, block);
            for (int i = 0; i < here; i++) {
                if (!(block[index][i] > before)) {
                    return false;
                }
                before = block[index][i];
            }
        }
        return count > 1;
    }
}
