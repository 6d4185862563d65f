// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import org.apache.commons.math3.distribution.TDistribution;

/**
 * Half-widths of 95 % intervals (JCGM 100, annex G): a standard uncertainty from few observations is widened by
 * Student's factor, with the effective degrees of freedom of Welch and Satterthwaite, truncated.
 */
public final class Coverage {
    private static final double NORMAL_95 = 1.959963984540054;

    /** Beyond so many degrees of freedom Student's factor is the normal one to 0.1 %. */
    private static final double MANY = 1000;

    private Coverage() {}

    /**
     * Combines a part found by statistics with one found otherwise.
     *
     * @param value the estimate
     * @param uStatistical standard uncertainty from observations
     * @param degrees its degrees of freedom
     * @param uOther standard uncertainty from everything else, taken as known
     */
    public static Uncertain combine(double value, double uStatistical, double degrees, double uOther) {
        double u = Math.hypot(uStatistical, uOther);
        return new Uncertain(value, u, u * factor(uStatistical, degrees, u));
    }

    /** A value whose standard uncertainty is taken as known. */
    public static Uncertain known(double value, double u) {
        return new Uncertain(value, u, NORMAL_95 * u);
    }

    private static double factor(double uStatistical, double degrees, double u) {
        if (!(uStatistical > 0)) {
            return NORMAL_95;
        }
        double effective = Math.floor(degrees * Math.pow(u / uStatistical, 4));
        if (!(effective < MANY)) {
            return NORMAL_95;
        }
        return new TDistribution(null, Math.max(1, effective)).inverseCumulativeProbability(0.975);
    }
}
