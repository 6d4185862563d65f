// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

/**
 * A stretch of the capture's time.
 *
 * @param startSeconds where it begins
 * @param endSeconds where it ends, after its start
 */
public record TimeWindow(double startSeconds, double endSeconds) {
    /** Refuses empty and endless windows. */
    public TimeWindow {
        if (!(startSeconds < endSeconds) || !Double.isFinite(endSeconds - startSeconds)) {
            throw new IllegalArgumentException("no window of time: " + startSeconds + " s to " + endSeconds + " s");
        }
    }

    /** Its length. */
    public double spanSeconds() {
        return endSeconds - startSeconds;
    }

    /** The instant in its middle. */
    public double middleSeconds() {
        return startSeconds + spanSeconds() / 2;
    }

    /** Whether some of the stretch lies in the window. */
    public boolean touches(double fromSeconds, double toSeconds) {
        return toSeconds >= startSeconds && fromSeconds <= endSeconds;
    }
}
