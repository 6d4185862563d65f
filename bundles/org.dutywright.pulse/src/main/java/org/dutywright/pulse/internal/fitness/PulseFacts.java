// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

/** What all pulses of a channel, disturbed ones included, tell of how they were recorded. One pass, constant memory. */
public final class PulseFacts {
    private static final int MOST_SAMPLES = 64;
    /** A period this much off the median one, in samples, is not tied to the clock of the recorder. */
    private static final double OFF_GRID = 0.3;

    private static final double NEAR = 1.5;
    private static final double LEAST_FREE = 0.05;

    private final double stepSeconds;
    private final double medianPeriodSeconds;
    private final PulseLengths low = new PulseLengths();
    private final PulseLengths high = new PulseLengths();
    private final long[] edgeSamples = new long[MOST_SAMPLES + 1];
    private long edges;
    private long periods;
    private long freePeriods;
    private double lastRiseSeconds = Double.NaN;

    /** Nothing yet. */
    public PulseFacts(double stepSeconds, double medianPeriodSeconds) {
        this.stepSeconds = stepSeconds;
        this.medianPeriodSeconds = medianPeriodSeconds;
    }

    /** Takes a transition into a state that passed both reference levels, with so many samples between them. */
    public void edge(int samples) {
        edgeSamples[Math.min(MOST_SAMPLES, samples)]++;
        edges++;
    }

    /** Takes a stay in a state from a transition to the next one. */
    public void pulse(boolean isHigh, double startSeconds, double seconds) {
        (isHigh ? high : low).add(seconds / stepSeconds);
        if (isHigh) {
            double off = Math.abs(startSeconds - lastRiseSeconds - medianPeriodSeconds) / stepSeconds;
            if (off <= NEAR) {
                periods++;
                freePeriods += off >= OFF_GRID ? 1 : 0;
            }
            lastRiseSeconds = startSeconds;
        }
    }

    /** Median period in samples, NaN without a whole cycle. */
    double periodSamples() {
        return medianPeriodSeconds / stepSeconds;
    }

    PulseLengths low() {
        return low;
    }

    PulseLengths high() {
        return high;
    }

    /** Whether the carrier runs free of the recorder's clock, so that lengths in samples vary. */
    boolean isFree() {
        return freePeriods > LEAST_FREE * periods;
    }

    /** Number of transitions that were timed. */
    long edges() {
        return edges;
    }

    /** Median number of samples on a transition, at most 64; 0 without any. */
    int medianEdgeSamples() {
        long passed = 0;
        for (int i = 0; i <= MOST_SAMPLES; i++) {
            passed += edgeSamples[i];
            if (passed > 0 && 2 * passed >= edges) {
                return i;
            }
        }
        return 0;
    }
}
