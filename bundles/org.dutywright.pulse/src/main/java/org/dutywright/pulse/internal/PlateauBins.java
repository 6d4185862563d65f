// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * Sums over the plateaus of a state, kept apart by their level. So the plateaus of runts and of a shifted level, which lie
 * far from those of most pulses, can be left out once all are known. Constant memory.
 */
final class PlateauBins {
    private static final int BINS_PER_SWING = 100;
    private static final int BINS = 2 * BINS_PER_SWING + 1;

    /** Plateaus further than this share of the swing from the median one are those of runts or of a shifted level. */
    private static final double FAR = 0.1;

    private final double centre;
    private final double swing;
    private final long[] pulses = new long[BINS];
    private final long[] samples = new long[BINS];
    private final long[] nearEdges = new long[BINS];
    private final double[] sums = new double[BINS];
    private final double[] squares = new double[BINS];
    private final double[] trendSquares = new double[BINS];
    private final long[] early = new long[BINS];
    private final double[] earlyMissing = new double[BINS];

    /**
     * Nothing yet.
     *
     * @param centre a level near the state
     * @param swing distance of the two states, about
     */
    PlateauBins(double centre, double swing) {
        this.centre = centre;
        this.swing = swing;
    }

    /** Takes a pulse that has plateau samples. */
    void add(Pulse pulse) {
        double off = pulse.plateau - centre;
        int bin = Math.clamp(Math.round(off / swing * BINS_PER_SWING) + BINS_PER_SWING, 0, BINS - 1);
        pulses[bin]++;
        samples[bin] += pulse.plateauSamples;
        nearEdges[bin] += pulse.nearEdges ? pulse.plateauSamples : 0;
        sums[bin] += pulse.plateauSamples * off;
        squares[bin] += pulse.plateauSquares;
        double n = pulse.plateauSamples;
        trendSquares[bin] += pulse.plateauTrend * pulse.plateauTrend * n * (n * n - 1) / 12;
        if (2 * pulse.earlySamples < pulse.plateauSamples) {
            early[bin] += pulse.earlySamples;
            // the mean of the later samples is off that of all by the sum of the early deviations over their own number
            earlyMissing[bin] += pulse.earlyOff * n / (n - pulse.earlySamples);
        }
    }

    /**
     * What the plateaus near the median one come to.
     *
     * @param pulses number of them
     * @param samples number of their samples
     * @param nearEdges those of the samples that lie close to transitions
     * @param level mean of the samples, the centre where there is none
     * @param squares sum of the squared distances of the samples from the mean of their pulse
     * @param trendSquares the part of it that straight lines through the samples of each pulse explain
     * @param early number of samples right after an aberration
     * @param earlyMissing sum over all samples by which those lead the level away from that of the later ones
     */
    record Total(
            long pulses,
            long samples,
            long nearEdges,
            double level,
            double squares,
            double trendSquares,
            long early,
            double earlyMissing) {}

    Total total() {
        int reach = (int) Math.round(FAR * BINS_PER_SWING);
        int median = medianBin();
        long totalPulses = 0;
        long totalSamples = 0;
        long totalNearEdges = 0;
        double sum = 0;
        double totalSquares = 0;
        double totalTrendSquares = 0;
        long totalEarly = 0;
        double totalMissing = 0;
        for (int bin = Math.max(0, median - reach); bin <= Math.min(BINS - 1, median + reach); bin++) {
            totalPulses += pulses[bin];
            totalSamples += samples[bin];
            totalNearEdges += nearEdges[bin];
            sum += sums[bin];
            totalSquares += squares[bin];
            totalTrendSquares += trendSquares[bin];
            totalEarly += early[bin];
            totalMissing += earlyMissing[bin];
        }
        double level = totalSamples == 0 ? centre : centre + sum / totalSamples;
        return new Total(
                totalPulses,
                totalSamples,
                totalNearEdges,
                level,
                totalSquares,
                totalTrendSquares,
                totalEarly,
                totalMissing);
    }

    private int medianBin() {
        long total = 0;
        for (long count : pulses) {
            total += count;
        }
        long passed = 0;
        for (int bin = 0; bin < BINS; bin++) {
            passed += pulses[bin];
            if (2 * passed >= total) {
                return bin;
            }
        }
        return BINS - 1;
    }
}
