// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * What is missing to the level of a state whose pulses end before an exponential transition has settled.
 *
 * <p>Over a plateau of n samples that starts with a deviation d and decays with z = n / tau, the mean deviation is
 * d (1 - e^-z) / z, and the least-squares line runs over d 12 ((1 - e^-z (1 + z)) / z^2 - (1 - e^-z) / (2 z)); closed forms of
 * the integrals. Their ratio depends on z only. The time constant follows from the 10 to 90 % duration, ln 9 tau.
 */
final class Settling {
    private static final double DURATION_IN_TAU = Math.log(9);

    /** Below it the line is nearly all there is to see: more than twice its run is not claimed to be missing. */
    private static final double LEAST_Z = 0.5;

    private static final double MOST_Z = 50;

    private Settling() {}

    /**
     * Mean deviation from the level as a share of the run of the straight line through a plateau.
     *
     * @param plateauSamples its length
     * @param edgeSamples 10 to 90 % duration of the transition into the state in samples, 0 where faster than that
     */
    static double shareOfRun(double plateauSamples, double edgeSamples) {
        double wanted = edgeSamples > 0 ? plateauSamples * DURATION_IN_TAU / edgeSamples : MOST_Z;
        double z = Math.clamp(wanted, LEAST_Z, MOST_Z);
        double mean = (1 - Math.exp(-z)) / z;
        double run = 12 * ((1 - Math.exp(-z) * (1 + z)) / (z * z) - (1 - Math.exp(-z)) / (2 * z));
        return mean / Math.abs(run);
    }
}
