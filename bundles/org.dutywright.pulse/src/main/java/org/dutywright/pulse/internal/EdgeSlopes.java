// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/** Mean steepness and bend of the transitions at the 50 % level, of each direction. */
final class EdgeSlopes {
    private static final double SIGMAS = 2;

    private final double[] slopes = new double[2];
    private final long[] slopeCounts = new long[2];
    private final double[] bends = new double[2];
    private final double[] bendSquares = new double[2];
    private final long[] bendCounts = new long[2];

    void add(Pulse pulse) {
        int direction = pulse.high ? 1 : 0;
        if (pulse.startsWithEdge && pulse.edgeSlope > 0) {
            slopes[direction] += pulse.edgeSlope;
            slopeCounts[direction]++;
        }
        if (pulse.startsWithEdge && Double.isFinite(pulse.edgeBend)) {
            bends[direction] += pulse.edgeBend;
            bendSquares[direction] += pulse.edgeBend * pulse.edgeBend;
            bendCounts[direction]++;
        }
    }

    /** In units a second, infinite without a transition of the direction. */
    double mean(boolean rising) {
        int direction = rising ? 1 : 0;
        return slopeCounts[direction] == 0 ? Double.POSITIVE_INFINITY : slopes[direction] / slopeCounts[direction];
    }

    /**
     * Largest mean bend that the transitions allow, a second: their mean and two of its standard deviations; infinite where fewer
     * than three showed it.
     */
    double mostBend(boolean rising) {
        int direction = rising ? 1 : 0;
        double n = bendCounts[direction];
        if (n <= 2) {
            return Double.POSITIVE_INFINITY;
        }
        double mean = bends[direction] / n;
        double variance = Math.max(0, bendSquares[direction] / n - mean * mean) / (n - 1);
        return Math.abs(mean) + SIGMAS * Math.sqrt(variance);
    }
}
