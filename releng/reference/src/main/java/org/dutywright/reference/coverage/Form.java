// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.coverage;

import org.apache.commons.math3.distribution.NormalDistribution;

/** Forms of transitions in closed form, from 0 to 1, over time in units of their scale. */
enum Form {
    /** A straight line; the scale is its length. */
    RAMP(0.8) {
        @Override
        double share(double x) {
            return Math.clamp(x, 0, 1);
        }

        @Override
        double inverse(double share) {
            return share;
        }

        @Override
        double integral(double x) {
            double inside = Math.clamp(x, 0, 1);
            return inside * inside / 2 + Math.max(0, x - 1);
        }
    },
    /** A single pole; the scale is its time constant. */
    EXPONENTIAL(Math.log(9)) {
        @Override
        double share(double x) {
            return 1 - Math.exp(-x);
        }

        @Override
        double inverse(double share) {
            return -Math.log1p(-share);
        }

        @Override
        double integral(double x) {
            return x - 1 + Math.exp(-x);
        }
    },
    /** The integral of a Gaussian that starts five standard deviations before its middle; the scale is one of them. */
    GAUSSIAN(2.5631031310892) {
        @Override
        double share(double x) {
            return NORMAL.cumulativeProbability(x - START);
        }

        @Override
        double inverse(double share) {
            return START + NORMAL.inverseCumulativeProbability(share);
        }

        @Override
        double integral(double x) {
            return twice(x - START) - twice(-START);
        }

        private double twice(double z) {
            return z * NORMAL.cumulativeProbability(z) + NORMAL.density(z);
        }
    };

    private static final double START = 5;
    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private final double duration;

    Form(double duration) {
        this.duration = duration;
    }

    /** 10 to 90 % duration in scales. */
    double duration() {
        return duration;
    }

    /** How much of the way is done. */
    abstract double share(double x);

    /** When so much of the way is done. */
    abstract double inverse(double share);

    /** Integral of the share from 0 on. */
    abstract double integral(double x);
}
