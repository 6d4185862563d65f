// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * How the means of successive plateaus of one state scatter: a measure of the noise that counts for means, with whatever
 * correlation it has within a plateau.
 *
 * <p>The variance is taken from successive differences (von Neumann et al. 1941), so that a level which drifts does not count
 * as noise: the sum of (m[i+1] - m[i])^2 / (1/n[i+1] + 1/n[i]) over their number estimates the variance of one sample times
 * the number of samples that are as good as one independent one. Their degrees of freedom are two thirds of their number.
 * Noise that is alike over more than a period counts as movement of the level.
 */
final class PlateauScatter {
    /** Means further apart than this share of the swing are a shifted level or a runt. */
    private static final double FAR = 0.05;

    private final double far;
    private double lastMean = Double.NaN;
    private long lastSamples;
    private double sum;
    private long differences;

    PlateauScatter(double swing) {
        far = FAR * Math.abs(swing);
    }

    void add(Pulse pulse) {
        double difference = pulse.plateau - lastMean;
        if (Math.abs(difference) < far) {
            sum += difference * difference / (1.0 / pulse.plateauSamples + 1.0 / lastSamples);
            differences++;
        }
        lastMean = pulse.plateau;
        lastSamples = pulse.plateauSamples;
    }

    /** Degrees of freedom of {@link #perSample}. */
    double degrees() {
        return 2.0 / 3 * differences;
    }

    /** Standard deviation that one sample would have if all were independent; 0 where fewer than two plateaus follow. */
    double perSample() {
        return differences == 0 ? 0 : Math.sqrt(sum / differences);
    }

    /** Number of samples that are as good as one independent one, at least 1. */
    double samplesPerIndependent(double noise) {
        double ratio = perSample() / noise;
        return noise > 0 && ratio > 1 ? ratio * ratio : 1;
    }
}
