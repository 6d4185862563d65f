// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.internal.MarkLog.Mark;

/**
 * Runts of both sorts in one order: excursions that made no transition, and pulses that were too low. Where a level shifts
 * in the middle of a pulse, the signal leaves its state or comes back to it as well: such places are left out.
 */
final class RuntPlaces {
    private final double periodSeconds;
    private final SpillLog.Reader<Mark> excursions;
    private final SpillLog.Reader<Mark> pulses;
    private final Shifts low;
    private final Shifts high;
    private Mark excursion;
    private Mark pulse;

    RuntPlaces(PulseStages stages, States states, double periodSeconds) throws IOException {
        this.periodSeconds = periodSeconds;
        low = new Shifts(stages.lowShifts().reader(), states.thresholds().lowLeave());
        high = new Shifts(stages.highShifts().reader(), states.thresholds().highLeave());
        excursions = stages.excursions().reader();
        pulses = stages.runts().reader();
        excursion = nextExcursion();
        pulse = pulses.next();
    }

    private Mark nextExcursion() throws IOException {
        Mark next = excursions.next();
        while (next != null && (next.high() ? high : low).explains(next)) {
            next = excursions.next();
        }
        return next;
    }

    /** The next one if it starts before an instant, else null. */
    Mark nextBefore(double seconds) throws IOException {
        boolean first = pulse == null || (excursion != null && excursion.startSeconds() <= pulse.startSeconds());
        Mark next = first ? excursion : pulse;
        if (next == null || !(next.startSeconds() < seconds)) {
            return null;
        }
        if (first) {
            excursion = nextExcursion();
        } else {
            pulse = pulses.next();
        }
        return next;
    }

    /** Walks over the shifts of one state beside its excursions. */
    private final class Shifts {
        private final SpillLog.Reader<Mark> reader;
        private final double tolerance;
        private Mark shift;

        Shifts(SpillLog.Reader<Mark> reader, double tolerance) throws IOException {
            this.reader = reader;
            this.tolerance = tolerance;
            shift = reader.next();
        }

        /** Whether an excursion is to the level of a shift, next to it. */
        boolean explains(Mark mark) throws IOException {
            while (shift != null && shift.endSeconds() + periodSeconds < mark.startSeconds()) {
                shift = reader.next();
            }
            return shift != null
                    && shift.startSeconds() - periodSeconds < mark.endSeconds()
                    && Math.abs(mark.value() - shift.value()) <= tolerance;
        }
    }
}
