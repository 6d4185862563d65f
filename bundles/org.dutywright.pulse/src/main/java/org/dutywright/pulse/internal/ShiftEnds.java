// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.internal.MarkLog.Mark;

/**
 * Tells whether a level shifts near an instant: where it begins or ends to, an edge passes between levels that are not
 * those of its neighbours, so its duration is no fault of its own.
 */
final class ShiftEnds {
    private final double nearSeconds;
    private final Walk low;
    private final Walk high;

    /**
     * The ends of all shifts of both states.
     *
     * @param nearSeconds how far from an end is near: the level of a pulse in which it moves may be either
     */
    ShiftEnds(MarkLog lowShifts, MarkLog highShifts, double nearSeconds) throws IOException {
        this.nearSeconds = nearSeconds;
        low = new Walk(lowShifts);
        high = new Walk(highShifts);
    }

    /** Whether an instant is near the start or the end of a shift; to be asked in rising order. */
    boolean near(double seconds) throws IOException {
        boolean lowNear = low.near(seconds);
        return high.near(seconds) || lowNear;
    }

    private final class Walk {
        private final SpillLog.Reader<Mark> reader;
        private Mark mark;

        Walk(MarkLog shifts) throws IOException {
            reader = shifts.reader();
            mark = reader.next();
        }

        boolean near(double seconds) throws IOException {
            boolean near = false;
            while (mark != null && mark.startSeconds() <= seconds + nearSeconds) {
                near |= seconds - mark.startSeconds() <= nearSeconds
                        || Math.abs(seconds - mark.endSeconds()) <= nearSeconds;
                if (mark.endSeconds() + nearSeconds >= seconds) {
                    return near;
                }
                mark = reader.next();
            }
            return near;
        }
    }
}
