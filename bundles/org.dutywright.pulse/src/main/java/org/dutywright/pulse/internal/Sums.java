// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/** Sums over stretches of an array. Four partial sums run side by side: additions then need not wait for each other. */
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
        int i = from;
        for (; i + 1 < to; i += 2) {
            double first = values[i] - centre;
            double second = values[i + 1] - centre;
            a += first * first;
            b += second * second;
        }
        for (; i < to; i++) {
            double last = values[i] - centre;
            a += last * last;
        }
        return a + b;
    }
}
