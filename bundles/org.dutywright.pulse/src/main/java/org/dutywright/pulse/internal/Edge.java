// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * The crossings of the 50 % level that belong to one transition. With noise there may be several; the instant of the
 * transition is the middle between the first and the last, which noise of either sign moves by the same amount.
 */
final class Edge {
    private int crossings;
    private double firstSeconds;
    private double firstArea;
    private double lastSeconds;
    private double lastArea;

    /** Forgets all crossings. */
    void clear() {
        crossings = 0;
    }

    /**
     * Adds a crossing.
     *
     * @param seconds its instant
     * @param area integral of the signal up to it
     */
    void add(double seconds, double area) {
        if (crossings == 0) {
            firstSeconds = seconds;
            firstArea = area;
        }
        lastSeconds = seconds;
        lastArea = area;
        crossings++;
    }

    /** Takes over the crossings of another one. */
    void set(Edge other) {
        crossings = other.crossings;
        firstSeconds = other.firstSeconds;
        firstArea = other.firstArea;
        lastSeconds = other.lastSeconds;
        lastArea = other.lastArea;
    }

    /** Instant of the transition. */
    double seconds() {
        return firstSeconds + (lastSeconds - firstSeconds) / 2;
    }

    /**
     * Integral of the signal up to the instant: exact for a single crossing. Between several crossings the signal is
     * within noise of the 50 % level, and what one cycle loses here the next one gains.
     */
    double area() {
        return (firstArea + lastArea) / 2;
    }
}
