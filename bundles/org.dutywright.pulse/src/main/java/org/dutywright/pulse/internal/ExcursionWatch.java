// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.EventSettings;
import org.dutywright.pulse.PulseSettings;

/**
 * Watches for places where a signal leaves its state and returns without a transition.
 *
 * <p>On a slow, noisy edge samples go out and in again before the edge goes on. So an excursion counts only once the
 * signal has stayed within its state for as long as a transition takes, or up to three times that if it was out for
 * long, and is near its level on average; a transition before that takes the excursion into itself.
 */
final class ExcursionWatch {
    /** A signal is back after so many samples at the earliest. */
    private static final double LEAST_QUIET = 2;

    /** However long it was out, it need not stay longer than so many transitions. */
    private static final double MOST_QUIET = 1;

    /** With fewer samples before an excursion, noise may feign a level beyond that of the state. */
    private static final int LEAST_OWN = 8;

    private final PulseSink sink;
    private final Plateau plateau;
    private final long leastSamples;
    private final TransitionTimer timer;
    private StateSide side;

    /** Whether the signal has been near its level in this segment: until then it may be on an edge that began before. */
    private boolean beenHome;

    private boolean out;
    private long outInRow;
    private boolean longEnough;
    private long length;
    private long quiet;
    private double quietSum;
    private double startSeconds;
    private double endSeconds;
    private double peak;
    private double ownLevel;
    private double pulseStartSeconds;
    private boolean afterEdge;
    /** What started within the aberration of an edge and ends within it belongs to it. */
    private double aberrationEndSeconds;

    ExcursionWatch(PulseSink sink, Plateau plateau, TransitionTimer timer, PulseSettings settings) {
        this.sink = sink;
        this.plateau = plateau;
        this.timer = timer;
        leastSamples = Math.round(settings.get(EventSettings.RUNT_SAMPLES));
    }

    /**
     * Starts a state.
     *
     * @param reached whether the signal came into it by a transition or is near its level
     */
    void start(StateSide state, boolean reached) {
        side = state;
        beenHome = reached;
        cancel();
    }

    /** The levels of the state have moved. */
    void follow(StateSide state) {
        side = state;
    }

    /** Forgets what is under watch. */
    void cancel() {
        out = false;
        outInRow = 0;
        longEnough = false;
        length = 0;
        quiet = 0;
        quietSum = 0;
    }

    /**
     * The samples of a stretch were within the state.
     *
     * @param px the sample before them, with the sign
     */
    void quiet(ChannelBlocks blocks, int from, int to, double px) throws IOException {
        beenHome = true;
        if (length > 0) {
            double[] values = blocks.values();
            returned(blocks, from, px, side.sign() * values[from]);
            quiet(to - from, side.sign() * Sums.of(values, from, to));
        }
    }

    private void quiet(int samples, double sum) throws IOException {
        if (length == 0) {
            return;
        }
        quiet += samples;
        quietSum += sum;
        boolean back = quietSum / quiet - ownLevel < (side.leave() - side.level()) / 2;
        double longestEdge = Math.max(timer.usualSamples(false), timer.usualSamples(true));
        double enough = Math.clamp((double) length, longestEdge, MOST_QUIET * longestEdge);
        if (back && quiet >= Math.max(LEAST_QUIET, enough)) {
            finish();
        }
    }

    /**
     * Takes a sample that may be outside.
     *
     * @param px the sample before, with the sign
     * @param x the sample, with the sign
     */
    void sample(ChannelBlocks blocks, int i, double px, double x, Pulse pulse) throws IOException {
        beenHome |= x <= side.near();
        if (x > side.leave()) {
            if (beenHome) {
                outside(blocks, i, px, x, pulse);
            }
            return;
        }
        returned(blocks, i, px, x);
        quiet(1, x);
    }

    private void returned(ChannelBlocks blocks, int i, double px, double x) {
        if (out) {
            out = false;
            outInRow = 0;
            endSeconds = blocks.secondsBefore(i, Math.clamp((px - side.leave()) / (px - x), 0, 1));
        }
    }

    private void outside(ChannelBlocks blocks, int i, double px, double x, Pulse pulse) {
        if (length == 0) {
            startSeconds =
                    px <= side.leave() ? blocks.secondsBefore(i, (side.leave() - px) / (x - px)) : blocks.seconds(i);
            pulseStartSeconds = pulse.startSeconds;
            afterEdge = pulse.startsWithEdge;
            aberrationEndSeconds = startSeconds + plateau.toSkip() * blocks.typicalStep();
            peak = x;
            // where the level itself has moved, noise reaches further: an excursion counts from the level before it
            double mean = side.sign() * plateau.mean();
            ownLevel = plateau.samples() < LEAST_OWN ? Math.max(mean, side.level()) : mean;
        }
        out = true;
        length += 1 + quiet;
        quiet = 0;
        quietSum = 0;
        peak = Math.max(peak, x);
        outInRow++;
        longEnough |= outInRow >= leastSamples;
    }

    private void finish() throws IOException {
        boolean aberration = endSeconds <= aberrationEndSeconds;
        if (longEnough && !out && !aberration && peak - ownLevel > side.leave() - side.level()) {
            sink.excursion(new PulseSink.Excursion(
                    side.high(), pulseStartSeconds, afterEdge, startSeconds, endSeconds, side.sign() * peak));
        }
        cancel();
    }
}
