// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/** Places in time, in the order in which they start; as many as there are, in constant memory. */
final class MarkLog extends SpillLog<MarkLog.Mark> {
    /** Numbers a mark. */
    private static final int RECORD = 4;

    /**
     * One place.
     *
     * @param startSeconds where it starts, from the capture's first sample
     * @param endSeconds where it ends
     * @param value what was seen: the peak of a runt, the number of further transitions of a bounce
     * @param high whether the state concerned is the high one
     */
    record Mark(double startSeconds, double endSeconds, double value, boolean high) {}

    MarkLog() {
        super(RECORD);
    }

    void add(double startSeconds, double endSeconds, double value, boolean high) throws IOException {
        put(startSeconds, endSeconds, value, high ? 1 : 0);
    }

    @Override
    Mark of(double[] record) {
        return new Mark(record[0], record[1], record[2], record[3] != 0);
    }
}
