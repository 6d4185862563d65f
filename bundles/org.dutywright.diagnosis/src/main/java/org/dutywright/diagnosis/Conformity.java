// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.dutywright.sensor.Sensor.Decision;

/**
 * Conformity of an uncertain value with limits, after JCGM 106:2012, from memory: the true value is taken as
 * normally distributed around the measured one with its standard uncertainty. A limit itself counts as inside.
 * With an uncertainty of 0 all rules come to the same: inside or outside.
 */
public final class Conformity {
    // Without a generator: nothing is sampled from it.
    private static final NormalDistribution STANDARD_NORMAL = new NormalDistribution(null, 0, 1);

    private Conformity() {}

    /**
     * Probability that the true value lies inside the limits: {@code Phi((upper - y) / u) - Phi((lower - y) / u)}.
     *
     * @param measured the measured value y
     * @param u its standard uncertainty, 0 or more, in the unit of the value
     * @param lower lower limit, empty if there is none
     * @param upper upper limit, empty if there is none
     * @return between 0 and 1; 1 without any limit
     */
    public static double probability(double measured, double u, OptionalDouble lower, OptionalDouble upper) {
        requireUncertainty(u);
        if (u == 0) {
            return inside(measured, 0, lower, upper) ? 1 : 0;
        }
        double below =
                upper.isPresent() ? STANDARD_NORMAL.cumulativeProbability((upper.getAsDouble() - measured) / u) : 1;
        double under =
                lower.isPresent() ? STANDARD_NORMAL.cumulativeProbability((lower.getAsDouble() - measured) / u) : 0;
        return Math.max(0, below - under);
    }

    /**
     * Decides by the rule of a sensor text; the guard band is coverage x u on the side of each limit.
     *
     * @return PASS or FAIL, by the three-way rule also INCONCLUSIVE
     */
    public static LineResult decide(
            double measured, double u, OptionalDouble lower, OptionalDouble upper, Decision decision) {
        requireUncertainty(u);
        double guard = decision.coverage() * u;
        return switch (decision.rule()) {
            case SIMPLE -> inside(measured, 0, lower, upper) ? LineResult.PASS : LineResult.FAIL;
            case GUARDED_ACCEPTANCE -> inside(measured, guard, lower, upper) ? LineResult.PASS : LineResult.FAIL;
            case THREE_WAY -> {
                if (inside(measured, guard, lower, upper)) {
                    yield LineResult.PASS;
                }
                yield outside(measured, guard, lower, upper) ? LineResult.FAIL : LineResult.INCONCLUSIVE;
            }
        };
    }

    private static boolean inside(double measured, double guard, OptionalDouble lower, OptionalDouble upper) {
        return (lower.isEmpty() || measured >= lower.getAsDouble() + guard)
                && (upper.isEmpty() || measured <= upper.getAsDouble() - guard);
    }

    private static boolean outside(double measured, double guard, OptionalDouble lower, OptionalDouble upper) {
        return (lower.isPresent() && measured <= lower.getAsDouble() - guard)
                || (upper.isPresent() && measured >= upper.getAsDouble() + guard);
    }

    private static void requireUncertainty(double u) {
        if (!(u >= 0) || Double.isInfinite(u)) {
            throw new IllegalArgumentException("a standard uncertainty must be a number of 0 or more, not " + u);
        }
    }
}
