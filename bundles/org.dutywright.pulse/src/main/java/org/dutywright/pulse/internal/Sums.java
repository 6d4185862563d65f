// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * Sums over stretches of an array. Several partial sums run side by side: additions then need not wait for each other. All
 * loops stand in small methods of their own, because compilers do best with those.
 */
final class Sums {
    private Sums() {}

    /** Sum of the values from {@code from} to before {@code to}. */
    static double of(double[] values, int from, int to) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = from;
        for (; i + 3 < to; i += 4) {
            a += values[i];
            b += values[i + 1];
            c += values[i + 2];
            d += values[i + 3];
        }
        for (; i < to; i++) {
            a += values[i];
        }
        return (a + b) + (c + d);
    }

    /** Smallest value from {@code from} to before {@code to}; infinite without any. */
    static double least(double[] values, int from, int to) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = from; i < to; i++) {
            least = values[i] < least ? values[i] : least;
        }
        return least;
    }

    /** Largest value from {@code from} to before {@code to}; infinite and negative without any. */
    static double most(double[] values, int from, int to) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            most = values[i] > most ? values[i] : most;
        }
        return most;
    }

    /** Sum of the products of neighbours, from {@code from} with the next one on to before {@code to}. */
    static double ofNeighbours(double[] values, int from, int to) {
        double a = 0;
        double b = 0;
        int i = from;
        for (; i + 2 < to; i += 2) {
            a += values[i] * values[i + 1];
            b += values[i + 1] * values[i + 2];
        }
        for (; i + 1 < to; i++) {
            a += values[i] * values[i + 1];
        }
        return a + b;
    }

    /** Sum of the squared distances of the values to {@code centre}. */
    static double ofSquares(double[] values, int from, int to, double centre) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = from;
        for (; i + 3 < to; i += 4) {
            double first = values[i] - centre;
            double second = values[i + 1] - centre;
            double third = values[i + 2] - centre;
            double fourth = values[i + 3] - centre;
            a += first * first;
            b += second * second;
            c += third * third;
            d += fourth * fourth;
        }
        for (; i < to; i++) {
            double last = values[i] - centre;
            a += last * last;
        }
        return (a + b) + (c + d);
    }
}
