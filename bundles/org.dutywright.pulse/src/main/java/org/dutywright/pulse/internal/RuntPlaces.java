// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.internal.MarkLog.Mark;

/** Runts of both sorts in one order: excursions that made no transition, and pulses that were too low. */
final class RuntPlaces {
    private final MarkLog.Reader excursions;
    private final MarkLog.Reader pulses;
    private Mark excursion;
    private Mark pulse;

    RuntPlaces(PulseStages stages) throws IOException {
        excursions = stages.excursions().reader();
        pulses = stages.runts().reader();
        excursion = excursions.next();
        pulse = pulses.next();
    }

    /** The next one if it starts before an instant, else null. */
    Mark nextBefore(double seconds) throws IOException {
        boolean first = pulse == null || (excursion != null && excursion.startSeconds() <= pulse.startSeconds());
        Mark next = first ? excursion : pulse;
        if (next == null || !(next.startSeconds() < seconds)) {
            return null;
        }
        if (first) {
            excursion = excursions.next();
        } else {
            pulse = pulses.next();
        }
        return next;
    }
}
