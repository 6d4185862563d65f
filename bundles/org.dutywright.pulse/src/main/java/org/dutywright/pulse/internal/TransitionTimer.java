// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * Times transitions from one reference level to the other, and knows how long they usually take. A transition is under way
 * from its trigger until the signal reaches the ending reference level, or for ever if it does not.
 */
final class TransitionTimer {
    /**
     * The two parts of a transition, up to its middle and from there on, differ by no more than this factor in samples; a
     * signal that dwells between the reference levels for longer does so for another reason.
     */
    private static final int MOST_UNEQUAL = 8;

    private static final int LEAST_SETTLE = 4;

    /** One odd transition, as beside a level that has shifted, does not make all others count as so long. */
    private static final double MOST_GROWTH = 2;

    /** Recent durations in samples of transitions into the low (0) and the high (1) state, 0 before the first. */
    private final double[] usual = new double[2];

    private double departedSeconds;
    private int samplesOut;
    /** Samples from there to the middle of the transition, negative before it. */
    private int samplesToMiddle = -1;

    private int direction;
    private boolean underWay;
    private double startSeconds;
    private int samplesToTrigger;
    private int samplesOnEdge;
    private long sinceTrigger;
    private double settleAfter;
    private double giveUpAfter;

    /** Forgets what is under way. */
    void reset() {
        departedSeconds = Double.NaN;
        samplesOut = 0;
        samplesToMiddle = -1;
        underWay = false;
    }

    /** The signal passed the starting reference level, perhaps not for the last time. */
    void departed(double seconds) {
        departedSeconds = seconds;
        samplesOut = 0;
        samplesToMiddle = -1;
    }

    /** The signal crossed the 50 % level on its way out, perhaps not for the last time. */
    void crossedMiddle() {
        samplesToMiddle = samplesToMiddle < 0 ? samplesOut : samplesToMiddle;
    }

    /** A sample lies between the reference levels. */
    void between() {
        samplesOut++;
        samplesOnEdge++;
    }

    /**
     * A transition has begun.
     *
     * @param intoHigh where it leads
     * @param untimed whether its start cannot be told
     */
    void triggered(boolean intoHigh, boolean untimed) {
        direction = intoHigh ? 1 : 0;
        underWay = true;
        startSeconds = untimed ? Double.NaN : departedSeconds;
        departedSeconds = Double.NaN;
        samplesToTrigger = samplesOut;
        samplesOnEdge = samplesOut;
        sinceTrigger = 0;
        giveUpAfter = MOST_UNEQUAL * (samplesOut + 1.0);
        settleAfter = usual[direction] > 0
                ? Math.clamp(3 * usual[direction], LEAST_SETTLE, Math.max(LEAST_SETTLE, giveUpAfter))
                : giveUpAfter;
    }

    /** Counts a sample after the trigger; tells whether the transition must be over by now, once. */
    boolean overdue() {
        sinceTrigger++;
        if (sinceTrigger >= giveUpAfter) {
            // the signal stays short of the reference level: what comes later is no part of the transition
            startSeconds = Double.NaN;
        }
        boolean now = sinceTrigger >= settleAfter && sinceTrigger - 1 < settleAfter;
        if (now) {
            usual[direction] = Math.max(usual[direction], 2.0 * (samplesToTrigger + 1));
        }
        return now;
    }

    /**
     * The signal reached the ending reference level.
     *
     * @param stepSeconds distance of two samples
     * @return duration of the transition, NaN if it cannot be told
     */
    double arrived(double seconds, double stepSeconds) {
        underWay = false;
        // the trigger lies far beyond the middle where noise is large, so the part after it may be short
        int toMiddle = Math.clamp(samplesToMiddle, 0, samplesToTrigger);
        boolean dwelt = toMiddle > MOST_UNEQUAL * (samplesToTrigger - toMiddle + sinceTrigger + 1);
        samplesToMiddle = -1;
        double duration = dwelt ? Double.NaN : seconds - startSeconds;
        if (duration >= 0) {
            double samples = duration / stepSeconds;
            double most = usual[direction] > 0 ? MOST_GROWTH * Math.max(1, usual[direction]) : samples;
            usual[direction] = Math.max(Math.min(samples, most), 0.75 * usual[direction]);
        } else if (usual[direction] == 0) {
            // where a level has moved no transition may ever be timed: twice the second half says how long they take
            usual[direction] = 2.0 * (sinceTrigger + 1);
        }
        return duration;
    }

    boolean underWay() {
        return underWay;
    }

    /** Samples between the reference levels of the transition that arrived last. */
    int samplesOnEdge() {
        return samplesOnEdge;
    }

    /** Samples that a transition usually takes, 0 if none was seen. */
    double usualSamples(boolean intoHigh) {
        return usual[intoHigh ? 1 : 0];
    }
}
