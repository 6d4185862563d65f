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
    },
    /** A second-order system with a damping of 0.6, which overshoots; the scale is one over its undamped angular frequency. */
    RINGING(1.8540503497354) {
        @Override
        double share(double x) {
            return x <= 0
                    ? 0
                    : 1 - Math.exp(-DAMPING * x) * (Math.cos(DAMPED * x) + DAMPING / DAMPED * Math.sin(DAMPED * x));
        }

        // the way there, by halves; it climbs up to its peak at half a turn
        @Override
        double inverse(double share) {
            double least = 0;
            double most = Math.PI / DAMPED;
            for (int i = 0; i < 60; i++) {
                double middle = (least + most) / 2;
                if (share(middle) < share) {
                    least = middle;
                } else {
                    most = middle;
                }
            }
            return most;
        }

        // of y'' + 2 z y' + y = 1 from rest
        @Override
        double integral(double x) {
            return x - Math.exp(-DAMPING * x) / DAMPED * Math.sin(DAMPED * x) - 2 * DAMPING * share(x);
        }

        @Override
        double overshoot() {
            return Math.exp(-Math.PI * DAMPING / DAMPED);
        }
    };

    private static final double DAMPING = 0.6;
    private static final double DAMPED = Math.sqrt(1 - DAMPING * DAMPING);
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

    /** By how much of the way it goes beyond its end. */
    double overshoot() {
        return 0;
    }

    /** How much of the way is done. */
    abstract double share(double x);

    /** When so much of the way is done. */
    abstract double inverse(double share);

    /** Integral of the share from 0 on. */
    abstract double integral(double x);
}
