// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * How well the 50 % instants of the transitions of one direction are known. Errors that differ from transition to
 * transition average out over many; those that are the same for all do not.
 *
 * @param noiseSeconds standard deviation of one instant from noise; differs from transition to transition
 * @param samplingSeconds standard deviation of one instant that is only known to lie between two samples: their distance over
 *     sqrt(12), 0 where enough samples lie on the transition
 * @param samplingKeptSeconds standard uncertainty of the mean error from sampling that does not average out over the recorded
 *     transitions, at most {@code samplingSeconds}: all of it where they repeat at the same place between the samples
 * @param codeSeconds standard uncertainty of the error from the code step, the same for all
 * @param shapeSeconds standard uncertainty of the error from the transition's curvature between the samples, the same for all
 * @param secondsPerUnit by how much one unit of error of the 50 % level moves the instant
 */
public record EdgeUncertainty(
        double noiseSeconds,
        double samplingSeconds,
        double samplingKeptSeconds,
        double codeSeconds,
        double shapeSeconds,
        double secondsPerUnit) {
    /** Instants that are known without error. */
    public static final EdgeUncertainty NONE = new EdgeUncertainty(0, 0, 0, 0, 0, 0);

    /** Standard uncertainty of the instant of a single transition, without that of the levels and of the clock. */
    public double singleSeconds() {
        return Math.hypot(noiseSeconds, withoutNoiseSeconds());
    }

    /** The same without noise: from the place of the samples and codes. */
    public double withoutNoiseSeconds() {
        return Math.hypot(samplingSeconds, Math.hypot(codeSeconds, shapeSeconds));
    }

    /** Standard deviation of the part of sampling that differs from transition to transition. */
    public double samplingScatterSeconds() {
        return Math.sqrt(Math.max(0, samplingSeconds * samplingSeconds - samplingKeptSeconds * samplingKeptSeconds));
    }
}
