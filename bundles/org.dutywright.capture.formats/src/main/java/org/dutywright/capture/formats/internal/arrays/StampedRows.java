// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal.arrays;

import java.io.IOException;
import java.nio.file.Path;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.UnreadableException;

/** Passes rows of an array on, with or without time stamps: those that lack a value are left out, those that go back refused. */
public final class StampedRows {
    private final Path file;
    private final CaptureBuilder builder;
    private final boolean stamped;
    private double lastSeconds = Double.NEGATIVE_INFINITY;

    /**
     * No row yet.
     *
     * @param file the file, for messages
     * @param builder takes the rows
     * @param stamped whether they have time stamps
     */
    public StampedRows(Path file, CaptureBuilder builder, boolean stamped) {
        this.file = file;
        this.builder = builder;
        this.stamped = stamped;
    }

    /**
     * Takes one row.
     *
     * @param row its values
     * @param complete whether all of them are numbers
     * @param seconds its stamp; not looked at where rows have none
     * @param number of the row in the file, for messages
     * @throws UnreadableException if time goes back
     */
    public void append(double[] row, boolean complete, double seconds, long number)
            throws UnreadableException, IOException {
        if (!complete || (stamped && !Double.isFinite(seconds))) {
            builder.leaveOut();
        } else if (!stamped) {
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

    /** Says how fine stamps of whole numbers are. */
    public void wholeStamps(double timeFactor) {
        builder.stampResolution(timeFactor);
    }

    /** Says how fine stamps of 32-bit floating point are at the end of the recording. */
    public void floatStamps(double timeFactor) {
        builder.stampResolution(lastSeconds < 0 ? 0 : Math.ulp((float) (lastSeconds / timeFactor)) * timeFactor);
    }

    /** Says that stamps are as fine as numbers are here. */
    public void doubleStamps() {
        builder.stampResolution(0);
    }
}
