// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/** Kinds of events, the one that names a place first standing first. */
public enum EventKind {
    STUCK_LOW("stuck-low"),
    STUCK_HIGH("stuck-high"),
    DROPOUT("dropout"),
    MISSING_PULSE("missing-pulse"),
    RUNT("runt"),
    BOUNCE("bounce"),
    EXTRA_PULSE("extra-pulse"),
    PERIOD_EXCURSION("period-excursion"),
    DUTY_JUMP("duty-jump"),
    SLOW_EDGE("slow-edge"),
    LEVEL_SHIFT("level-shift");

    private final String word;

    EventKind(String word) {
        this.word = word;
    }

    /** The word used in files. */
    public String word() {
        return word;
    }
}
