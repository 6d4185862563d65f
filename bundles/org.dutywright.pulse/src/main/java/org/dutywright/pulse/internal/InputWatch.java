// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.util.Optional;
import org.dutywright.pulse.InputThresholds;

/**
 * Sees a signal as the input of a module does: high from the rising threshold on upwards, low from the falling one on
 * downwards. Each change belongs to the transition of the pulses that leads into the same state: that of the pulse it lies
 * in, or the one to come.
 */
final class InputWatch {
    private final double rising;
    private final double falling;
    private final boolean known;

    /** 1 high, -1 low, 0 not told yet. */
    private int state;

    private final InputBend bend = new InputBend();

    /** Whether the change found last waits for the sample after it, and whether it belongs to the transition to come. */
    private boolean open;

    private boolean openInNext;

    private int changes;
    private double changeSeconds;
    private double changeSecondsPerUnit;
    private double changeBendSeconds;
    private int nextChanges;
    private double nextSeconds;
    private double nextSecondsPerUnit;
    private double nextBendSeconds;

    InputWatch(Optional<InputThresholds> thresholds) {
        known = thresholds.isPresent();
        rising = thresholds.map(InputThresholds::rising).orElse(Double.POSITIVE_INFINITY);
        falling = thresholds.map(InputThresholds::falling).orElse(Double.NEGATIVE_INFINITY);
    }

    boolean isKnown() {
        return known;
    }

    /** A segment starts. */
    void reset() {
        state = 0;
        bend.clear();
        open = false;
        changes = 0;
        nextChanges = 0;
    }

    /** Takes a sample, before it is asked about. */
    void follow(double seconds, double value) {
        bend.add(seconds, value);
        if (open) {
            double found = bend.seconds(state > 0 ? rising : falling);
            if (openInNext) {
                nextBendSeconds = found;
            } else {
                changeBendSeconds = found;
            }
            open = false;
        }
    }

    /** Where between a sample and the next one the input changes, as a share of the way; NaN if it does not. */
    double change(double previous, double value) {
        boolean toHigh = state <= 0 && value >= rising;
        boolean toLow = state >= 0 && value <= falling;
        if (!toHigh && !toLow) {
            return Double.NaN;
        }
        boolean first = state == 0;
        state = toHigh ? 1 : -1;
        double share = ((toHigh ? rising : falling) - previous) / (value - previous);
        return first || !(share >= 0) ? Double.NaN : share;
    }

    /** The change found last lies within a pulse. */
    void within(boolean highPulse, double seconds, double secondsPerUnit) {
        open = true;
        openInNext = highPulse != state > 0;
        if (!openInNext) {
            changes++;
            changeSeconds = seconds;
            changeSecondsPerUnit = secondsPerUnit;
            changeBendSeconds = 0;
        } else {
            nextChanges++;
            nextSeconds = seconds;
            nextSecondsPerUnit = secondsPerUnit;
            nextBendSeconds = 0;
        }
    }

    /** A pulse ends: what belongs to the transition into it is complete. */
    void finish(Shape shape) {
        shape.inputSeconds = changes == 1 ? changeSeconds : Double.NaN;
        shape.inputSecondsPerUnit = changes == 1 ? changeSecondsPerUnit : 0;
        shape.inputBendSeconds = changes == 1 ? changeBendSeconds : 0;
        open &= openInNext;
        openInNext = false;
        changes = nextChanges;
        changeSeconds = nextSeconds;
        changeSecondsPerUnit = nextSecondsPerUnit;
        changeBendSeconds = nextBendSeconds;
        nextChanges = 0;
    }
}
