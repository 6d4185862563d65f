// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.dutywright.pulse.Budget.Component;

/**
 * Half-widths of intervals from budgets.
 *
 * <p>Where no bounded component makes up a quarter of the variance, JCGM 100, annex G is followed: Student's factor at the
 * truncated effective degrees of freedom of Welch and Satterthwaite, which is the normal factor where all are known.
 *
 * <p>Else the interval is that of the sum of its parts: the two largest bounded components as rectangles of half-widths a and
 * b, all others together as a normal part of standard deviation s (those from few observations widened first to the normal
 * one of the same interval). The probability that such a sum stays below x is exact:
 * (G(x + a + b) - G(x + a - b) - G(x - a + b) + G(x - a - b)) / (4 a b), where G is the normal distribution function
 * integrated twice, G(z) = ((z^2 + s^2) Phi(z / s) + z s phi(z / s)) / 2. This follows from integrating over both rectangles
 * (the convolution that JCGM 100, G.1.4 asks for).
 */
public final class Coverage {
    /** The probability of the intervals stated. */
    public static final double P95 = 0.95;

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    /** Beyond so many degrees of freedom Student's factor is the normal one to 0.1 %. */
    private static final double MANY = 1000;

    /** From this share of the variance on, a bounded component shapes the distribution. */
    private static final double SHAPES = 0.25;

    /** A second rectangle narrower than this share of the first is as well taken into the normal part. */
    private static final double NARROW = 0.05;

    private static final int HALVINGS = 80;

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
        return Budget.of(
                        Component.typeA("scatter of the observations", uStatistical, degrees),
                        Component.normal("everything else", uOther))
                .around(value);
    }

    /** A value whose standard uncertainty is taken as known. */
    public static Uncertain known(double value, double u) {
        return Budget.of(Component.normal("as stated", u)).around(value);
    }

    /** Student's factor of a two-sided interval; the normal one for infinite degrees of freedom. */
    public static double studentFactor(double degreesOfFreedom, double probability) {
        double upper = (1 + probability) / 2;
        return degreesOfFreedom < MANY
                ? new TDistribution(null, degreesOfFreedom).inverseCumulativeProbability(upper)
                : NORMAL.inverseCumulativeProbability(upper);
    }

    /** Half-width of the symmetric interval that holds the error of a budget with a probability between 0 and 1. */
    public static double halfWidth(Budget budget, double probability) {
        double u = budget.u();
        if (!(u > 0)) {
            return 0;
        }
        List<Component> bounded = budget.components().stream()
                .filter(it -> it.shape().isBounded())
                .sorted(Comparator.comparingDouble(Component::u).reversed())
                .toList();
        if (bounded.isEmpty() || bounded.get(0).u() < Math.sqrt(SHAPES) * u) {
            return u * studentFactor(budget.effectiveDegreesOfFreedom(), probability);
        }
        double first = bounded.get(0).u();
        double second = bounded.size() > 1 && bounded.get(1).u() > NARROW * first
                ? bounded.get(1).u()
                : 0;
        List<Component> pooled = new ArrayList<>(bounded.subList(second > 0 ? 2 : 1, bounded.size()));
        budget.components().stream().filter(it -> !it.shape().isBounded()).forEach(pooled::add);
        Budget rest = new Budget(pooled);
        double widening = studentFactor(rest.effectiveDegreesOfFreedom(), probability)
                / studentFactor(Double.POSITIVE_INFINITY, probability);
        return solve(distribution(Math.sqrt(3) * first, Math.sqrt(3) * second, widening * rest.u()), probability, u);
    }

    private static double solve(DoubleUnaryOperator below, double probability, double u) {
        double from = 0;
        double to = 20 * u;
        double wanted = (1 + probability) / 2;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (from + to) / 2;
            if (below.applyAsDouble(middle) < wanted) {
                from = middle;
            } else {
                to = middle;
            }
        }
        return to;
    }

    private static DoubleUnaryOperator distribution(double a, double b, double s) {
        if (b == 0) {
            return x -> (once(x + a, s) - once(x - a, s)) / (2 * a);
        }
        return x ->
                (twice(x + a + b, s) - twice(x + a - b, s) - twice(x - a + b, s) + twice(x - a - b, s)) / (4 * a * b);
    }

    // The normal distribution function integrated once, a ramp where there is no normal part.
    private static double once(double z, double s) {
        return s == 0 ? Math.max(0, z) : z * below(z / s) + s * NORMAL.density(z / s);
    }

    private static double twice(double z, double s) {
        if (s == 0) {
            return z > 0 ? z * z / 2 : 0;
        }
        return ((z * z + s * s) * below(z / s) + z * s * NORMAL.density(z / s)) / 2;
    }

    private static double below(double z) {
        return NORMAL.cumulativeProbability(z);
    }
}
