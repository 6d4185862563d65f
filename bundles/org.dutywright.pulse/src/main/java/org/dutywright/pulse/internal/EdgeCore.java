// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * Times the part of a transition in which no sample belongs to either state, noise included. A transition may last longer
 * between its reference levels because noise keeps samples of the next state short of one; it does not last longer here.
 */
final class EdgeCore {
    private double leftSeconds;
    private double firstSeconds;
    private double lastSeconds;
    private int samples;
    private boolean underWay;

    /** Forgets what is under way. */
    void reset() {
        leftSeconds = Double.NaN;
        samples = 0;
        underWay = false;
    }

    /** Looks whether the signal leaves the state between two samples, perhaps not for the last time. */
    void leave(ChannelBlocks blocks, int i, StateSide side, double px, double x) {
        if (px <= side.clear() && x > side.clear()) {
            leftSeconds = blocks.secondsBefore(i, StateSide.share(px, x, side.clear()));
            samples = 0;
        }
    }

    /** The other state has been told. */
    void triggered() {
        underWay = true;
    }

    /** Takes a sample; the first one that belongs to the state after a transition ends it, and the pulse is told. */
    void sample(ChannelBlocks blocks, int i, StateSide side, double px, double x, Pulse pulse) {
        if (x > side.clear()) {
            firstSeconds = samples == 0 ? blocks.seconds(i) : firstSeconds;
            lastSeconds = blocks.seconds(i);
            samples++;
        } else if (underWay) {
            underWay = false;
            double reached = blocks.secondsBefore(i, StateSide.share(px, x, side.clear()));
            pulse.coreSeconds = seconds(reached);
            leftSeconds = Double.NaN;
        }
    }

    // with few samples, the time from the first to the last is all that is certain
    private double seconds(double reachedSeconds) {
        double whole = reachedSeconds - leftSeconds;
        if (samples >= EventLimits.SAMPLES_TO_INTERPOLATE || Double.isNaN(whole)) {
            return whole;
        }
        return samples == 0 ? 0 : lastSeconds - firstSeconds;
    }
}
