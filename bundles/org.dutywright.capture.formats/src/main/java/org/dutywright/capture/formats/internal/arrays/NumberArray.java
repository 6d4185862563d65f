// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal.arrays;

import java.io.IOException;
import org.dutywright.capture.UnreadableException;

/** An array of samples in a file, of one or more columns side by side, read a block of rows at a time. */
public interface NumberArray {
    /** Most columns of one array. */
    int MOST_COLUMNS = 1000;

    /** What the elements are. */
    enum Kind {
        /** Floating point of 64 bits. */
        DOUBLE,
        /** Floating point of fewer bits. */
        FLOAT,
        /** Whole numbers that fit 16 bits with a sign. */
        COUNT,
        /** Other whole numbers. */
        WHOLE
    }

    /** Its place in the file: names with slashes between them. */
    String path();

    /** What its elements are. */
    Kind kind();

    /** Number of rows as declared. */
    long rows();

    /** Number of rows that the file really holds, at most {@link #rows}. */
    long heldRows();

    /** Number of columns, 1 to {@link #MOST_COLUMNS}. */
    int columns();

    /**
     * Reads rows.
     *
     * @param firstRow the first
     * @param count how many, all of them held
     * @param target one array for each column, filled from index 0 on
     * @throws UnreadableException if the file does not hold what it declares
     */
    void read(long firstRow, int count, double[][] target) throws UnreadableException, IOException;
}
