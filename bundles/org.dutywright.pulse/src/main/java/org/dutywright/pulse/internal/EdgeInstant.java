// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * The instant of the transition under way: from a fit where it has enough samples between the reference levels, else from
 * the samples that straddle the 50 % level.
 */
final class EdgeInstant {
    private final int leastSamples;
    private final EdgeFit fit = new EdgeFit();
    /** Crossings of the 50 % level that the next transition may be made of. */
    private final Edge departure = new Edge();
    /** Crossings of the transition into the current state, while more may follow. */
    private final Edge arrival = new Edge();

    private double fittedSeconds = Double.NaN;
    private double middle;

    /**
     * Nothing yet.
     *
     * @param leastSamples from so many samples between the reference levels on an instant is fitted
     */
    EdgeInstant(int leastSamples) {
        this.leastSamples = leastSamples;
    }

    /** The signal passed the starting reference level, perhaps not for the last time. */
    void departed() {
        fit.clear();
    }

    /** A sample lies between the reference levels, or is the one that ends a transition. */
    void sample(double seconds, double value) {
        fit.add(seconds, value);
    }

    /** The signal is at home: what crossed the 50 % level before belongs to no transition that is still to come. */
    void atHome() {
        departure.clear();
    }

    /** A crossing of the 50 % level out of the state, and the integral of the signal up to it. */
    void crossed(double seconds, double area) {
        departure.add(seconds, area);
    }

    /** Noise took the signal back across the level: still the transition that led into this state. */
    void crossedBack(double seconds, double area) {
        arrival.add(seconds, area);
        departure.clear();
    }

    /** The state has changed. */
    void flipped() {
        arrival.set(departure);
        departure.clear();
        fittedSeconds = Double.NaN;
    }

    /** The transition has reached the other reference level. */
    void arrived(Pulse pulse, double middleLevel) {
        if (pulse.edgeSamples >= leastSamples && pulse.edgeSeconds > 0) {
            middle = middleLevel;
            fittedSeconds = fit.instantSeconds(arrival.seconds(), pulse.edgeSeconds, middleLevel, pulse.high ? 1 : -1);
            if (!Double.isNaN(fittedSeconds)) {
                pulse.fitSamples = fit.samples();
                pulse.edgeSlope = fit.slope();
            }
        } else if (pulse.edgeSeconds > 0) {
            pulse.edgeBend = fit.bend(arrival.seconds(), pulse.edgeSeconds, middleLevel, pulse.high ? 1 : -1);
        }
    }

    /** The instant. */
    double seconds() {
        return Double.isNaN(fittedSeconds) ? arrival.seconds() : fittedSeconds;
    }

    /** Integral of the signal up to the instant; between a crossing and a fitted instant the signal is at the level. */
    double area() {
        return Double.isNaN(fittedSeconds)
                ? arrival.area()
                : arrival.area() + middle * (fittedSeconds - arrival.seconds());
    }
}
