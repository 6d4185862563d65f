// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * How many samples at the ends of a pulse do not count for its level: the aberration region of its transitions, but where
 * pulses are short no more than a third of one at either end.
 */
final class Margins {
    /** Edges that a pulse is long against. */
    private static final double LONG = 4;

    private final double aberration;
    /** Samples of the last pulse of the low (0) and the high (1) state. */
    private final long[] last = {Long.MAX_VALUE, Long.MAX_VALUE};

    /**
     * Margins.
     *
     * @param aberration length of the aberration region in transition durations
     */
    Margins(double aberration) {
        this.aberration = aberration;
    }

    /** A pulse is over. */
    void pulse(boolean high, long samples) {
        last[high ? 1 : 0] = samples;
    }

    /** Whether the last pulse of a state was long against an edge of so many samples, which must be known. */
    boolean outlasts(boolean high, double edgeSamples) {
        return edgeSamples > 0 && last[high ? 1 : 0] > LONG * edgeSamples;
    }

    /** Samples after a transition of so many samples into a state. */
    long head(boolean high, double edgeSamples) {
        return margin(high, edgeSamples, Math.ceil(edgeSamples));
    }

    /**
     * Samples before a transition out of a state.
     *
     * @param edgeSamples what such a transition usually takes, 0 if none was seen
     */
    long tail(boolean high, double edgeSamples) {
        if (edgeSamples == 0) {
            return Plateau.MOST_HELD;
        }
        // an edge faster than the samples has no part before the one that showed it
        return edgeSamples < 1.5 ? 1 : margin(high, edgeSamples, Math.ceil(edgeSamples / 2)) + 1;
    }

    private long margin(boolean high, double edgeSamples, double least) {
        double wanted = Math.ceil(aberration * edgeSamples);
        double most = Math.max(least, last[high ? 1 : 0] / 3.0);
        return (long) Math.min(wanted, most);
    }

    /** Whether the margins of a pulse are narrower than the aberration region. */
    boolean narrow(long margin, double edgeSamples) {
        return margin < Math.floor(aberration * edgeSamples);
    }
}
