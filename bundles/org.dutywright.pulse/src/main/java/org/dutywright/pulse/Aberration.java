// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * How far a signal goes beyond the level of its state next to a transition (IEEE Std 181-2011: aberrations of the pre- and
 * the post-transition aberration region). The region reaches from the 50 % instant of the transition so many transition
 * durations into the state as {@link PulseSettings#ABERRATION} says, at least over four samples, and never beyond the middle
 * of the pulse.
 *
 * @param beyond how far the extreme sample of the region lies beyond the level, seen from the other state, in the channel's
 *     unit; negative if it stays short of it
 * @param samples number of samples in the region
 * @param bend up to how much higher the signal may go between the samples around the extreme one: an eighth of the second
 *     difference there
 */
public record Aberration(double beyond, int samples, double bend) {
    /** Nothing is known: no sample, or no transition. */
    public static final Aberration NONE = new Aberration(Double.NaN, 0, 0);

    /** Whether there is an extreme. */
    public boolean isKnown() {
        return samples > 0;
    }
}
