// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * One passage from one state to the other.
 *
 * @param rising whether it leads to the high state
 * @param instantSeconds 50 % reference level instant, in the capture's time
 * @param durationSeconds time from the 10 % to the 90 % reference level (either direction), NaN where the
 *     signal did not pass both on its way
 * @param samplesOnEdge number of samples between the 10 % and the 90 % level
 * @param samplesInFit number of samples in the least-squares fit that gave the instant, 0 where it was interpolated
 *     between the two samples that straddle the 50 % level
 * @param before how far the signal was beyond the state that it left, shortly before
 * @param after how far it went beyond the state that it reached, shortly after
 */
public record Transition(
        boolean rising,
        double instantSeconds,
        double durationSeconds,
        int samplesOnEdge,
        int samplesInFit,
        Aberration before,
        Aberration after) {
    /** A transition whose instant was interpolated and whose surroundings are not known. */
    public Transition(boolean rising, double instantSeconds, double durationSeconds, int samplesOnEdge) {
        this(rising, instantSeconds, durationSeconds, samplesOnEdge, 0);
    }

    /** A transition whose surroundings are not known. */
    public Transition(
            boolean rising, double instantSeconds, double durationSeconds, int samplesOnEdge, int samplesInFit) {
        this(rising, instantSeconds, durationSeconds, samplesOnEdge, samplesInFit, Aberration.NONE, Aberration.NONE);
    }

    /** Whether the instant comes from a fit. */
    public boolean fitted() {
        return samplesInFit > 0;
    }
}
