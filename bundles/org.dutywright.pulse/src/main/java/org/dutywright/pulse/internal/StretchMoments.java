// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * Sum, sum of squares and sum times place of a stretch of samples, each taken as its distance from a level. One pass; a
 * plain carrier of its results.
 */
final class StretchMoments {
    private static final int LANES = 4;

    private double sum;
    private double squares;
    private double rising;

    /**
     * Works through the samples from {@code from} to before {@code to}.
     *
     * <p>Four sums run side by side. The place of a sample is four times that of its group and its place in it; the sum of
     * the group's places follows from the sum of the sums after each group, without a multiplication a sample.
     */
    void of(double[] values, int from, int to, double centre) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        double sums = 0;
        double more = 0;
        double squaresA = 0;
        double squaresB = 0;
        int i = from;
        for (; i + LANES - 1 < to; i += LANES) {
            double first = values[i] - centre;
            double second = values[i + 1] - centre;
            double third = values[i + 2] - centre;
            double fourth = values[i + 3] - centre;
            a += first;
            b += second;
            c += third;
            d += fourth;
            sums += a + b;
            more += c + d;
            squaresA += first * first + second * second;
            squaresB += third * third + fourth * fourth;
        }
        sum = (a + b) + (c + d);
        squares = squaresA + squaresB;
        int groups = (i - from) / LANES;
        rising = LANES * (groups * sum - (sums + more)) + (b + 2 * c + 3 * d);
        for (; i < to; i++) {
            double last = values[i] - centre;
            sum += last;
            squares += last * last;
            rising += (i - from) * last;
        }
    }

    /** Sum of the distances. */
    double sum() {
        return sum;
    }

    /** Sum of their squares. */
    double squares() {
        return squares;
    }

    /** Sum of the distances, each times its place, counted from 0. */
    double rising() {
        return rising;
    }
}
