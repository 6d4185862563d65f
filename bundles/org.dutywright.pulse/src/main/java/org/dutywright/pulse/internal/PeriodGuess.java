// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * A first guess of the period from the distances of rising edges, before bounces and runts are known. Distances are
 * counted in bins of a sixteenth of an octave. The guess is the mean around the bin neighbourhood that covers most of
 * the time among those with at least a twentieth of the distances: bounces are many but cover little time, dropouts
 * cover much but are few.
 */
final class PeriodGuess {
    private static final int PER_OCTAVE = 16;
    private static final int LOWEST_OCTAVE = -40;
    private static final int OCTAVES = 64;
    private static final double LEAST_SHARE = 0.05;

    private final long[] counts = new long[PER_OCTAVE * OCTAVES];
    private final double[] seconds = new double[PER_OCTAVE * OCTAVES];
    private long total;

    void add(double distanceSeconds) {
        double bin = (Math.log(distanceSeconds) / Math.log(2) - LOWEST_OCTAVE) * PER_OCTAVE;
        int index = (int) Math.clamp(bin, 0, counts.length - 1);
        counts[index]++;
        seconds[index] += distanceSeconds;
        total++;
    }

    /** The guess in seconds, NaN without a distance. */
    double periodSeconds() {
        double mostTime = 0;
        double guess = Double.NaN;
        for (int i = 0; i < counts.length; i++) {
            int from = Math.max(0, i - PER_OCTAVE / 4);
            int to = Math.min(counts.length, i + PER_OCTAVE / 4 + 1);
            long count = 0;
            double time = 0;
            for (int j = from; j < to; j++) {
                count += counts[j];
                time += seconds[j];
            }
            if (count > 0 && count >= LEAST_SHARE * total && time > mostTime) {
                mostTime = time;
                guess = time / count;
            }
        }
        return guess;
    }
}
