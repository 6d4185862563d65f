// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.util.Arrays;

/** Where the rows of an Arrow file lie. */
final class ArrowBatches {
    /** Says that no bits tell which values are missing. */
    static final long NONE = -1;

    private final long[] firstRows;
    private final long[][] values;
    private final long[][] validity;

    /**
     * Takes what was found.
     *
     * @param firstRows first row of each batch, and the number of all rows at the end
     * @param values by column and batch, byte of the file at which the values begin
     * @param validity by column and batch, byte at which the bits of values that are not missing begin, or {@link
     *     #NONE}
     */
    ArrowBatches(long[] firstRows, long[][] values, long[][] validity) {
        this.firstRows = firstRows;
        this.values = values;
        this.validity = validity;
    }

    int count() {
        return firstRows.length - 1;
    }

    long rows() {
        return firstRows[count()];
    }

    long firstRow(int batch) {
        return firstRows[batch];
    }

    long endRow(int batch) {
        return firstRows[batch + 1];
    }

    /** The batch that holds a row. */
    int of(long row) {
        int found = Arrays.binarySearch(firstRows, row);
        int batch = found < 0 ? -found - 2 : found;
        // batches without rows begin at the same row as the one after them
        while (firstRows[batch + 1] == firstRows[batch]) {
            batch++;
        }
        return batch;
    }

    long values(int column, int batch) {
        return values[column][batch];
    }

    long validity(int column, int batch) {
        return validity[column][batch];
    }
}
