// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/** Whether a PWM channel could be measured at all. */
public enum Status {
    /** Two states with transitions. */
    OK("ok"),
    /** Changes, but has no two states. */
    NO_SIGNAL("no-signal"),
    /** No transition, nearer the low level. */
    STUCK_LOW("stuck-low"),
    /** No transition, nearer the high level. */
    STUCK_HIGH("stuck-high"),
    /** Too coarse or too noisy to tell pulses. */
    UNREADABLE("unreadable");

    private final String word;

    Status(String word) {
        this.word = word;
    }

    /** The word used in files. */
    public String word() {
        return word;
    }
}
