// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.Optional;

/**
 * How the samples of a state pile up at the extreme value of the recording, where the range of the recorder may end.
 *
 * <p>A flat level alone is no sign: a clean signal that stays within one code is flat as well. It is clipped where noise
 * can be seen elsewhere in the recording and yet all samples of this state share its extreme value, or more than twice as
 * many as the value next to it: the tail of noise falls off, a clipped one piles up.
 *
 * @param value the extreme value
 * @param share share of the samples of the state that have it
 */
public record Pile(double value, double share) {
    private static final double ALL = 0.995;
    private static final double LEAST_SHARE = 0.02;
    private static final double STEEPEST_TAIL = 2;
    private static final int LEAST_SAMPLES = 64;
    /** With fewer samples a chance pile of noise of less than a code cannot be told from a clipped one. */
    private static final int ENOUGH_SAMPLES = 4000;

    /** The pile of a state, empty if its samples lie as those of a signal within the range of the recorder. */
    static Optional<Pile> of(SampleWindows windows, StateZones zones, int zone, VisibleNoise noise) {
        long samples = 0;
        long extreme = 0;
        long next = 0;
        for (double value : windows.values()) {
            if (zones.zone(value) == zone) {
                samples++;
                extreme += zones.isExtreme(value, zone) ? 1 : 0;
                next += zones.isNextToExtreme(value, zone) ? 1 : 0;
            }
        }
        boolean all = samples >= LEAST_SAMPLES && extreme >= ALL * samples;
        boolean part = samples >= ENOUGH_SAMPLES && extreme >= LEAST_SHARE * samples && extreme > STEEPEST_TAIL * next;
        return noise.isVisible() && (all || part)
                ? Optional.of(new Pile(zones.extreme(zone), (double) extreme / samples))
                : Optional.empty();
    }
}
