// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.Optional;

/**
 * What the samples themselves tell of how they were recorded.
 *
 * @param lowPile where the low state is clipped
 * @param highPile where the high state is clipped
 * @param minMaxPairs whether they are pairs of the smallest and the largest value of a stretch of time
 * @param distinct number of different values looked at
 */
public record SampleSigns(Optional<Pile> lowPile, Optional<Pile> highPile, boolean minMaxPairs, int distinct) {
    /** Looks at the samples of a channel with two states. */
    public static SampleSigns of(SampleWindows windows, StateZones zones, int distinct) {
        VisibleNoise noise = VisibleNoise.in(windows, zones);
        return new SampleSigns(
                Pile.of(windows, zones, -1, noise),
                Pile.of(windows, zones, 1, noise),
                MinMaxPairs.in(windows),
                distinct);
    }
}
