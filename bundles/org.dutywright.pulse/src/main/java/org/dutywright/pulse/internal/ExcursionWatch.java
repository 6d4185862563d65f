// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.PulseSettings;

/**
 * Watches for places where a signal leaves its state and returns without a transition.
 *
 * <p>On a slow, noisy edge samples go out and in again before the edge goes on. So an excursion counts only once the
 * signal has stayed within its state for as long as it was out, and for as long as a transition takes; a transition
 * before that takes the excursion into itself.
 */
final class ExcursionWatch {
    private final PulseSink sink;
    private final Plateau plateau;
    private final long leastSamples;
    private boolean high;
    private int sign;
    private double leave;
    private double level;
    private double longestEdge;

    private boolean out;
    private long outInRow;
    private boolean longEnough;
    private long length;
    private long quiet;
    private double startSeconds;
    private double endSeconds;
    private double peak;
    private double pulseStartSeconds;
    private boolean afterEdge;

    ExcursionWatch(PulseSink sink, Plateau plateau, PulseSettings settings) {
        this.sink = sink;
        this.plateau = plateau;
        leastSamples = Math.round(settings.get(PulseSettings.RUNT_SAMPLES));
    }

    /**
     * Starts a state.
     *
     * @param stateLevel level of the state, with the sign
     * @param leaveLevel level, with the sign, beyond which a sample is outside the state
     */
    void start(boolean highState, int stateSign, double stateLevel, double leaveLevel) {
        high = highState;
        sign = stateSign;
        level = stateLevel;
        leave = leaveLevel;
        cancel();
    }

    /** Tells how long transitions take, in samples. */
    void longestEdge(double[] usual) {
        longestEdge = Math.max(usual[0], usual[1]);
    }

    /** Whether an excursion long enough to be reported is under watch. */
    boolean pending() {
        return longEnough;
    }

    /** Forgets what is under watch. */
    void cancel() {
        out = false;
        outInRow = 0;
        longEnough = false;
        length = 0;
        quiet = 0;
    }

    /** So many samples were within the state. */
    void quiet(int samples) throws IOException {
        if (length == 0) {
            return;
        }
        quiet += samples;
        if (quiet >= Math.max(Math.max(2.0, (double) length), longestEdge)) {
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
        if (x > leave) {
            outside(blocks, i, px, x, pulse);
            return;
        }
        if (out) {
            out = false;
            outInRow = 0;
            endSeconds = blocks.secondsBefore(i, Math.clamp((px - leave) / (px - x), 0, 1));
        }
        quiet(1);
    }

    private void outside(ChannelBlocks blocks, int i, double px, double x, Pulse pulse) {
        if (length == 0) {
            startSeconds = px <= leave ? blocks.secondsBefore(i, (leave - px) / (x - px)) : blocks.seconds(i);
            pulseStartSeconds = pulse.startSeconds;
            afterEdge = pulse.startsWithEdge;
            peak = x;
        }
        out = true;
        length += 1 + quiet;
        quiet = 0;
        peak = Math.max(peak, x);
        outInRow++;
        longEnough |= outInRow >= leastSamples;
    }

    /** Reports what is under watch, if it has returned. */
    void finish() throws IOException {
        // where the level itself has moved, noise reaches further: it counts from the level that the pulse has
        double own = sign * plateau.mean();
        if (longEnough && !out && peak - own > leave - level) {
            sink.excursion(
                    new PulseSink.Excursion(high, pulseStartSeconds, afterEdge, startSeconds, endSeconds, sign * peak));
        }
        cancel();
    }
}
