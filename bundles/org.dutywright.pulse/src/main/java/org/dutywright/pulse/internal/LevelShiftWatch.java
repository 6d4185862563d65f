// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.EventSettings;
import org.dutywright.pulse.PulseSettings;

/**
 * Watches the level of one state. It has shifted once it lies off the level of the capture's first pulses by more than
 * the limit in several pulses in a row; the shift lasts until a pulse is clearly back.
 */
final class LevelShiftWatch {
    /** A pulse is back when it is within this share of the limit, so that a level on the limit makes one event. */
    private static final double BACK = 0.8;

    /** A pulse that cannot tell is off like its neighbour if it is off by this share of what that is. */
    private static final double ALIKE = 0.6;

    private final double reference;
    private final double uReference;
    private final double limit;
    private final double sigmas;
    private final double noise;
    private final double codeStep;
    private final long leastPulses;
    private final MarkLog shifts;
    private final boolean high;

    private long offInRow;
    private double side;
    private double startSeconds;
    private double endSeconds;
    private double sum;
    private long samples;
    /** How far the pulse just before is off where it cannot tell, 0 where it is not. */
    private double doubtfulOff;

    private double doubtfulSeconds;
    /** Whether the pulse of the state before was clearly off. */
    private boolean clearBefore;

    LevelShiftWatch(boolean high, States states, PulseSettings settings, MarkLog shifts) {
        this.high = high;
        this.shifts = shifts;
        reference = high ? states.firstHigh() : states.firstLow();
        uReference = high ? states.uFirstHigh() : states.uFirstLow();
        limit = settings.get(EventSettings.SHIFT_SHARE) / 100 * (states.firstHigh() - states.firstLow());
        sigmas = settings.get(EventSettings.EVENT_SIGMA);
        double one = high ? states.levels().highNoise() : states.levels().lowNoise();
        // where neighbours are alike, a mean tells less than its number of samples says
        noise = one * Math.sqrt(states.samplesPerIndependent());
        codeStep = states.codeStep();
        leastPulses = Math.round(settings.get(EventSettings.SHIFT_PULSES));
    }

    void pulse(Pulse pulse) throws IOException {
        if (pulse.levelSamples() == 0) {
            return;
        }
        double off = pulse.level() - reference;
        double own = noise / Math.sqrt((double) pulse.levelSamples());
        double u = Math.hypot(Math.hypot(own, uReference), codeStep / Math.sqrt(12));
        double most = Math.max(limit, sigmas * u);
        boolean same = offInRow > 0 && Math.signum(off) == side;
        if (sigmas * u > limit && Math.abs(off) <= most) {
            doubtful(pulse, off, same);
            clearBefore = false;
        } else if ((same && Math.abs(off) > BACK * most) || Math.abs(off) > most) {
            if (!same) {
                boolean began = doubtfulOff / off > ALIKE;
                double started = began ? doubtfulSeconds : pulse.startSeconds;
                finish();
                startSeconds = started;
                side = Math.signum(off);
            }
            offInRow++;
            clearBefore = true;
            endSeconds = pulse.endSeconds;
            sum += pulse.level() * pulse.levelSamples();
            samples += pulse.levelSamples();
        } else {
            finish();
        }
    }

    /**
     * Too few samples to tell: such a pulse makes no shift and ends none, but a shift may begin or end in the one next to it. It counts
     * there if it is about as far off.
     */
    private void doubtful(Pulse pulse, double off, boolean same) throws IOException {
        if (same) {
            boolean stillOff = clearBefore && off / (sum / samples - reference) > ALIKE;
            endSeconds = stillOff ? pulse.endSeconds : endSeconds;
            return;
        }
        if (offInRow > 0) {
            finish();
        }
        doubtfulOff = Math.abs(off) > limit ? off : 0;
        doubtfulSeconds = pulse.startSeconds;
    }

    /** Ends what is under watch. */
    void finish() throws IOException {
        if (offInRow >= leastPulses) {
            shifts.add(startSeconds, endSeconds, sum / samples, high);
        }
        offInRow = 0;
        doubtfulOff = 0;
        sum = 0;
        samples = 0;
    }
}
