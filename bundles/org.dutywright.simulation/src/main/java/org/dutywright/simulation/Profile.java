// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import java.util.List;

/**
 * A value over time: straight lines between points, constant before the first and after the last. Two points at
 * one instant make a step; at that instant the later one holds.
 *
 * @param points in order of time, at least one
 */
public record Profile(List<Point> points) {

    /** The value at one instant. */
    public record Point(double seconds, double value) {}

    /**
     * Copies its argument.
     *
     * @throws IllegalArgumentException if there is no point, or time runs backwards
     */
    public Profile {
        points = List.copyOf(points);
        if (points.isEmpty()) {
            throw new IllegalArgumentException("a profile needs a point");
        }
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).seconds() < points.get(i - 1).seconds()) {
                throw new IllegalArgumentException("time runs backwards at point " + (i + 1));
            }
        }
    }

    /** The same value at all times. */
    public static Profile constant(double value) {
        return new Profile(List.of(new Point(0, value)));
    }

    /** The value at an instant. */
    public double at(double seconds) {
        int after = pointsUpTo(seconds);
        if (after == 0) {
            return points.get(0).value();
        }
        Point left = points.get(after - 1);
        if (after == points.size()) {
            return left.value();
        }
        Point right = points.get(after);
        double share = (seconds - left.seconds()) / (right.seconds() - left.seconds());
        return left.value() + share * (right.value() - left.value());
    }

    /** How many points lie at or before an instant. */
    private int pointsUpTo(double seconds) {
        int low = 0;
        int high = points.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (points.get(middle).seconds() <= seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
