// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * Mean and scatter of the samples of one pulse that lie outside its transitions and their aberrations. The samples at
 * the start are skipped; the last ones are held back, because only the next transition tells which ones they were.
 */
final class Plateau {
    /** Largest number of samples held back at the end of a pulse. */
    static final int MOST_HELD = 1 << 14;

    private static final double SIGMAS = 3;
    private static final int LEAST_AWAY = 16;
    private static final int MOST_AWAY = 1 << 12;
    private static final double LOOK_AGAIN = 1.25;

    private final PulseSink sink;
    private final StretchMoments moments = new StretchMoments();
    private boolean high;
    private final double[] held = new double[MOST_HELD];
    private int heldStart;
    private int heldCount;
    private int tail;
    private long toSkip;
    private double centre;
    private long count;
    private double sum;
    private double squares;
    private double rising;
    private double earlySum;
    private long early;
    private double skippedSum;
    private long skipped;
    private final double[] away = new double[MOST_AWAY];
    private int awayCount;
    private int awayLooked;
    private boolean far;

    /**
     * No pulse yet.
     *
     * @param sink is told of the samples that count
     */
    Plateau(PulseSink sink) {
        this.sink = sink;
    }

    /**
     * Starts a pulse.
     *
     * @param inHigh whether it is one of the high state
     * @param tail samples at its end that do not count
     * @param centre a level near the samples: deviations from it keep more digits than the samples
     */
    void start(boolean inHigh, long tail, double centre) {
        high = inHigh;
        this.tail = (int) Math.min(tail, MOST_HELD);
        this.centre = centre;
        toSkip = 0;
        heldStart = 0;
        heldCount = 0;
        count = 0;
        sum = 0;
        squares = 0;
        rising = 0;
        earlySum = 0;
        early = 0;
        skippedSum = 0;
        skipped = 0;
        far = false;
        dropAway();
    }

    /** Skips so many more samples. */
    void skip(long head) {
        toSkip = head;
        // a part of the aberration region: what rings on is largest there, and longer means show it less
        early = (head + 2) / 3;
    }

    /** Number of samples that are still to come right after a transition and do not count. */
    long toSkip() {
        return toSkip;
    }

    /** Takes samples of the state. */
    void add(double[] values, int from, int to) {
        int next = from;
        if (toSkip > 0) {
            next = (int) Math.min(to, from + toSkip);
            skippedSum += Sums.of(values, from, next) - centre * (next - from);
            skipped += next - from;
            toSkip -= next - from;
        }
        int release = heldCount + (to - next) - tail;
        if (release > 0) {
            int fromHeld = Math.min(heldCount, release);
            releaseHeld(fromHeld);
            count(values, next, next + release - fromHeld);
            next += release - fromHeld;
        }
        hold(values, next, to);
    }

    private void releaseHeld(int number) {
        int straight = Math.min(number, held.length - heldStart);
        count(held, heldStart, heldStart + straight);
        count(held, 0, number - straight);
        heldStart = (heldStart + number) % held.length;
        heldCount -= number;
    }

    private void hold(double[] values, int from, int to) {
        int end = (heldStart + heldCount) % held.length;
        int straight = Math.min(to - from, held.length - end);
        System.arraycopy(values, from, held, end, straight);
        System.arraycopy(values, from + straight, held, 0, to - from - straight);
        heldCount += to - from;
    }

    private void count(double[] values, int from, int to) {
        sink.plateau(high, values, from, to);
        if (count < early) {
            int last = (int) Math.min(to, from + early - count);
            earlySum += Sums.of(values, from, last) - centre * (last - from);
        }
        moments.of(values, from, to, centre);
        squares += moments.squares();
        rising += moments.rising() + count * moments.sum();
        sum += moments.sum();
        count += to - from;
    }

    /**
     * Takes a sample away from the state. It counts if the signal returns without a transition, or if it stands away for
     * longer than a transition takes: then the level has moved.
     *
     * @param most samples that a transition out of the state may take
     * @param mostChange by how much those that stand rise or fall at most; a slow edge goes on
     */
    void addAway(double value, double most, double mostChange) {
        away[awayCount++] = value;
        boolean full = awayCount == MOST_AWAY;
        if (full || awayCount > Math.max(awayLooked * LOOK_AGAIN, Math.max(LEAST_AWAY, most))) {
            if (full || Math.abs(awayChange()) < mostChange) {
                keepAway();
                far = false;
            }
            awayLooked = awayCount;
        }
    }

    // Change of the least-squares line through the samples away, from the first to the last.
    private double awayChange() {
        double middle = (awayCount - 1) / 2.0;
        double weighted = 0;
        for (int i = 0; i < awayCount; i++) {
            weighted += (i - middle) * (away[i] - centre);
        }
        double n = awayCount;
        return n * weighted / (n * (n * n - 1) / 12);
    }

    /** The signal went too far away for noise: what is away counts no more, unless it stays away for long from here on. */
    void wentFar() {
        far = true;
        dropAway();
    }

    /** The signal returned: if it was not far, what was away was noise and counts. */
    void cameHome() {
        if (far) {
            dropAway();
        } else {
            keepAway();
        }
        far = false;
    }

    private void keepAway() {
        if (awayCount > 0) {
            add(away, 0, awayCount);
            dropAway();
        }
    }

    /** What was away was a transition or a runt. */
    void dropAway() {
        awayCount = 0;
        awayLooked = 0;
    }

    /** Number of samples that count so far. */
    long samples() {
        return count;
    }

    /** Mean so far, the given level where nothing counted yet. */
    double mean() {
        return count > 0 ? centre + sum / count : centre;
    }

    // Slope of the least-squares line through the samples, numbered from 0 on.
    private double trend() {
        double n = count;
        return count < 3 ? 0 : (rising - (n - 1) / 2 * sum) / (n * (n * n - 1) / 12);
    }

    /**
     * Whether the samples so far stand at one level beyond doubt, so that no edge leads through them, however slow.
     *
     * @param mostTrend change from sample to sample that is none
     * @param noise RMS of the noise at most
     */
    boolean stands(double mostTrend, double noise) {
        // variance of a least-squares slope over n points one apart: 12 noise^2 / n^3
        double doubt = SIGMAS * noise * Math.sqrt(12 / Math.pow((double) count, 3));
        return count >= LEAST_AWAY && Math.abs(trend()) + doubt < mostTrend;
    }

    /** Writes the result into a pulse that ends here. */
    void finish(Pulse pulse) {
        pulse.plateauSamples = count;
        if (count > 0) {
            pulse.plateau = centre + sum / count;
            pulse.plateauSquares = Math.max(0, squares - sum * sum / count);
            pulse.plateauTrend = trend();
            pulse.earlySamples = Math.min(early, count);
            pulse.earlyOff = earlySum - pulse.earlySamples * sum / count;
        }
        pulse.settledSamples = count + skipped + heldCount;
        if (pulse.settledSamples > 0) {
            int straight = Math.min(heldCount, held.length - heldStart);
            double heldSum = Sums.of(held, heldStart, heldStart + straight)
                    + Sums.of(held, 0, heldCount - straight)
                    - centre * heldCount;
            pulse.settled = centre + (sum + skippedSum + heldSum) / pulse.settledSamples;
        }
    }
}
