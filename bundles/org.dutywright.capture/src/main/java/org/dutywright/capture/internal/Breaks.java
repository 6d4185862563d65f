// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.internal;

import java.util.Arrays;

/** Rows before which the reader left out others, in order; a bounded number of them. */
public final class Breaks {
    private long[] rows = new long[16];
    private int count;
    private boolean tooMany;

    /** Says that rows are missing before a row; rows must be given in order. */
    public void addBefore(long row) {
        if (row == 0 || (count > 0 && rows[count - 1] == row)) {
            return;
        }
        if (count == TimeBaseFinder.MAX_SEGMENTS - 1) {
            tooMany = true;
            return;
        }
        if (count == rows.length) {
            rows = Arrays.copyOf(rows, 2 * count);
        }
        rows[count++] = row;
    }

    int count() {
        return count;
    }

    /** Whether there were more than can be kept. */
    boolean tooMany() {
        return tooMany;
    }

    /** Starts a walk over all rows. */
    Walk walk() {
        return new Walk();
    }

    /** Tells of each row, asked in order, whether others are missing before it. */
    final class Walk {
        private int next;

        boolean isBefore(long row) {
            if (next < count && rows[next] == row) {
                next++;
                return true;
            }
            return false;
        }
    }
}
