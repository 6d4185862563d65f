// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/** One whole cycle before it is judged; instants count from the capture's first sample. */
final class RawCycle {
    /** Edge into the active level. */
    final double startSeconds;
    /** End of the active pulse. */
    final double switchSeconds;
    /** Next edge into the active level. */
    final double endSeconds;
    /** Integral of the signal. */
    final double area;
    /** Whether an event keeps it out of the statistics. */
    boolean disturbed;
    /** Whether an event names it already. */
    boolean named;

    RawCycle(Pulse active, Pulse passive) {
        startSeconds = active.startSeconds;
        switchSeconds = active.endSeconds;
        endSeconds = passive.endSeconds;
        area = active.area + passive.area;
    }

    double periodSeconds() {
        return endSeconds - startSeconds;
    }

    boolean contains(double seconds) {
        return seconds >= startSeconds && seconds < endSeconds;
    }

    /** An event names this cycle and keeps it out of the statistics. */
    void disturb() {
        disturbed = true;
        named = true;
    }

    /** Median period of the cycles in a log, NaN without any. */
    static double medianPeriodSeconds(PulseLog log, boolean activeHigh) throws IOException {
        return ExactMedian.of(sink -> {
            Reader reader = new Reader(log, activeHigh);
            for (RawCycle cycle = reader.next(); cycle != null; cycle = reader.next()) {
                sink.take(cycle.periodSeconds());
            }
        });
    }

    /** Builds the cycles of one channel from its pulses: the first and last partial ones are left out. */
    static final class Reader {
        private final SpillLog.Reader<Pulse> pulses;
        private final boolean activeHigh;
        private Pulse active;

        Reader(PulseLog log, boolean activeHigh) {
            // the active pulse is needed until the one after it has been read
            pulses = log.reader(2);
            this.activeHigh = activeHigh;
        }

        /** The next cycle, or null after the last one. */
        RawCycle next() throws IOException {
            for (Pulse pulse = pulses.next(); pulse != null; pulse = pulses.next()) {
                if (pulse.high == activeHigh) {
                    active = pulse.startsWithEdge && pulse.endsWithEdge ? pulse : null;
                } else if (active != null && pulse.startsWithEdge && pulse.endsWithEdge) {
                    RawCycle cycle = new RawCycle(active, pulse);
                    active = null;
                    return cycle;
                } else {
                    active = null;
                }
            }
            return null;
        }
    }
}
