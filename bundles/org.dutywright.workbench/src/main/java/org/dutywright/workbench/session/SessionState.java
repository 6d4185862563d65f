// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

/**
 * How far the work on a capture is.
 *
 * @param phase what is being done, or how it ended
 * @param message why it failed, one line for people; empty in other phases
 */
public record SessionState(Phase phase, String message) {
    /** Steps of the work, and its ends. */
    public enum Phase {
        /** The file is read and summed up for drawing. */
        OPENING,
        /** The capture is there and is being measured. */
        MEASURING,
        /** Everything is there. */
        DONE,
        /** It could not be read or measured. */
        FAILED,
        /** The user asked to stop; what was there by then stays. */
        CANCELLED
    }

    static SessionState of(Phase phase) {
        return new SessionState(phase, "");
    }

    static SessionState failed(String message) {
        return new SessionState(Phase.FAILED, message);
    }

    /** Whether work goes on. */
    public boolean isBusy() {
        return phase == Phase.OPENING || phase == Phase.MEASURING;
    }
}
