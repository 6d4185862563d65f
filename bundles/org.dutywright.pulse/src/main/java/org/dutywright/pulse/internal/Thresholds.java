// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import org.dutywright.pulse.EventSettings;
import org.dutywright.pulse.PulseSettings;

/**
 * The levels at which the edge finder acts.
 *
 * @param low level of the low state
 * @param high level of the high state, above low
 * @param lower 10 % reference level, in the unit of the samples
 * @param middle 50 % reference level
 * @param upper 90 % reference level
 * @param hysteresis half-width of the hysteresis around the middle
 * @param lowLeave how far a sample may be above the low level and still belong to the low state
 * @param highLeave how far a sample may be below the high level and still belong to the high state
 */
record Thresholds(
        double low,
        double high,
        double lower,
        double middle,
        double upper,
        double hysteresis,
        double lowLeave,
        double highLeave) {

    /**
     * Thresholds for two levels and their noise. The hysteresis follows the larger noise, so that an edge is found at
     * the same place whichever way the signal is turned.
     */
    static Thresholds of(double low, double high, double lowNoise, double highNoise, PulseSettings settings) {
        double swing = high - low;
        double noise = Math.max(lowNoise, highNoise);
        double wanted = Math.max(
                settings.get(PulseSettings.HYSTERESIS_SHARE) / 100 * swing,
                settings.get(PulseSettings.HYSTERESIS_SIGMA) * noise);
        return new Thresholds(
                low,
                high,
                low + settings.get(PulseSettings.LOWER_REFERENCE) / 100 * swing,
                low + swing / 2,
                low + settings.get(PulseSettings.UPPER_REFERENCE) / 100 * swing,
                Math.min(wanted, settings.get(PulseSettings.HYSTERESIS_MOST) / 100 * swing),
                leave(swing, lowNoise, settings),
                leave(swing, highNoise, settings));
    }

    // Beyond 45 % of the swing a sample is as near to the other state, whatever the noise.
    private static double leave(double swing, double noise, PulseSettings settings) {
        double wanted = Math.max(
                settings.get(EventSettings.RUNT_SHARE) / 100 * swing, settings.get(EventSettings.EVENT_SIGMA) * noise);
        return Math.min(wanted, 0.45 * swing);
    }

    double swing() {
        return high - low;
    }
}
