// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * Kinds of events, the one that names a place first standing first. T is the median period of the channel; each limit is one
 * of {@link EventSettings}.
 *
 * <p>One place has one event. So the cycle cut short where pulses begin or cease to be absent has no event of its own, nor
 * have the odd period and duty that come of a single slow edge.
 *
 * <p>A cycle with a dropout, missing pulse, runt, bounce, extra pulse or period excursion, and one in which a level shift
 * begins or ends, is disturbed: it stays out of the statistics. A duty jump and a slow edge do not disturb, because the odd
 * duty or duration is the fault itself and must stay among the values that are judged.
 */
public enum EventKind {
    /** No transition from here to the end of the capture, for 4 T or more, or in all of it; the level is low. */
    STUCK_LOW("stuck-low"),
    /** As stuck low, at the high level. */
    STUCK_HIGH("stuck-high"),
    /** Three or more pulses are absent between two transitions, or up to a gap in the recording. */
    DROPOUT("dropout"),
    /** One or two pulses are absent: two active edges lie at least 1.5 T apart. One event a pulse. */
    MISSING_PULSE("missing-pulse"),
    /** The signal leaves a state and returns without reaching the other one. Where a runt stands in the place of a pulse, the place is a runt and not a missing pulse. */
    RUNT("runt"),
    /** Further transitions within 5 % of T after an edge. */
    BOUNCE("bounce"),
    /** Two active edges lie less than 0.5 T apart. */
    EXTRA_PULSE("extra-pulse"),
    /** A whole cycle is off T by more than 5 %. */
    PERIOD_EXCURSION("period-excursion"),
    /**
     * The duty changes by more than 5 points from one cycle to the next and no other channel moves with it; where there is none
     * to compare, and the duty does not go on moving.
     */
    DUTY_JUMP("duty-jump"),
    /** A transition is longer than the sensor's limit, or without one longer than 10 % of T. */
    SLOW_EDGE("slow-edge"),
    /** A state level moves by more than 5 % of the swing. */
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
