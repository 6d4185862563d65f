// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.io.IOException;

/** All cycles of a channel, in order, kept outside the heap where there are many. Safe for several threads. */
public interface CycleTable extends AutoCloseable {
    /** Number of cycles. */
    long size();

    /**
     * One cycle.
     *
     * @throws IndexOutOfBoundsException if there is none of this index
     */
    Cycle get(long index) throws IOException;

    /** Reads all cycles in order; each call starts at the first. */
    Cursor cursor() throws IOException;

    /** Frees the cycles. */
    @Override
    void close() throws IOException;

    /** Walks over the cycles. */
    interface Cursor {
        /** The next cycle, or null after the last. */
        Cycle next() throws IOException;
    }
}
