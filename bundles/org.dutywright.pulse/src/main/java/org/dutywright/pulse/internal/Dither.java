// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * What scatter leaves of the rounding to a grid when many rounded values are averaged.
 *
 * <p>The mean error of rounding is a sawtooth of the true value, with the Fourier series step / (pi h) sin(2 pi h x / step).
 * Scatter of standard deviation s multiplies its h-th term by exp(-2 (pi h s / step)^2). With the true value anywhere between
 * two grid points, the variance of what is left is the sum of step^2 / (2 pi^2 h^2) exp(-4 (pi h s / step)^2): step^2 / 12
 * without scatter, nothing from about s = 0.6 step on.
 *
 * <p>Rounded values that flip between two neighbours have a standard deviation of up to half a step, however small the
 * scatter is. So only what exceeds that is believed.
 */
final class Dither {
    private static final int TERMS = 50;

    private Dither() {}

    /** Scatter that rounded values prove: their variance less that of flipping between two neighbours. */
    static double proven(double step, double roundedSd) {
        return Math.sqrt(Math.max(0, roundedSd * roundedSd - step * step / 4));
    }

    /** Standard uncertainty of the mean of many rounded values from rounding. */
    static double remaining(double step, double scatter) {
        return scatter == 0 ? step / Math.sqrt(12) : step * Math.sqrt(variance(scatter / step));
    }

    private static double variance(double share) {
        double sum = 0;
        for (int h = 1; h <= TERMS; h++) {
            sum += term(h, share);
        }
        return sum;
    }

    /** The h-th term of the variance in squared steps, for scatter in steps. */
    static double term(int h, double share) {
        double angle = Math.PI * h * share;
        return Math.exp(-4 * angle * angle) / (2 * Math.PI * Math.PI * h * h);
    }
}
