// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

/**
 * How the pulses of one state pile up at their shortest length, counted in whole samples. For one pass over the pulses;
 * constant memory.
 */
public final class PulseLengths {
    private static final int LEAST_PILED = 80;
    private static final int LEAST_SAMPLES = 3;
    /** No sensor rests nearer than this share of the period to an end of the duty (facts of the trade: valid from 5 %). */
    private static final double MOST_OF_PERIOD = 0.05;

    private static final double LEAST_SHARE = 0.1;
    /** A duty on its way takes each length about as often. One that rests takes two lengths by turns, which is more. */
    private static final double NEXT_OF_LATER = 2;

    private static final int CHANCE = 3;

    private long shortest = Long.MAX_VALUE;
    /** Number of pulses of the shortest length and of the two after it. */
    private long[] counts = new long[3];

    private long total;

    /** Takes a whole pulse. */
    public void add(double samples) {
        long rounded = Math.round(samples);
        total++;
        if (rounded < shortest) {
            long[] moved = new long[counts.length];
            for (int i = 0; i < counts.length; i++) {
                long to = shortest == Long.MAX_VALUE ? counts.length : i + shortest - rounded;
                if (to < counts.length) {
                    moved[(int) to] = counts[i];
                }
            }
            counts = moved;
            shortest = rounded;
        }
        if (rounded - shortest < counts.length) {
            counts[(int) (rounded - shortest)]++;
        }
    }

    /** The shortest length in samples. */
    long shortest() {
        return shortest;
    }

    /** Number of pulses of the shortest length. */
    long piled() {
        return counts[0];
    }

    /**
     * Whether many pulses have exactly the shortest length, a small part of the period, while lengths a little above are
     * as rare as any.
     */
    boolean arePiled(double periodSamples) {
        double mostNext = NEXT_OF_LATER * counts[2] + CHANCE;
        return shortest >= LEAST_SAMPLES
                && shortest < MOST_OF_PERIOD * periodSamples
                && counts[0] >= Math.max(LEAST_PILED, LEAST_SHARE * total)
                && counts[1] <= mostNext
                && total - counts[0] - counts[1] >= LEAST_SHARE * total;
    }
}
