// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * The levels at which the input of a module switches, in the channel's unit.
 *
 * @param rising from here on upwards it sees the high state
 * @param falling from here on downwards it sees the low state, not above {@code rising}
 */
public record InputThresholds(double rising, double falling) {
    /** Refuses an input that would switch up below the level at which it switches down. */
    public InputThresholds {
        if (!(rising >= falling)) {
            throw new IllegalArgumentException("rising " + rising + " must not be below falling " + falling);
        }
    }
}
