// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/** The pulses of a channel after bounces and runts were taken out, in order, in constant memory. */
final class PulseLog extends SpillLog<Pulse> {
    private static final int HIGH = 1;
    private static final int STARTS_WITH_EDGE = 2;
    private static final int ENDS_WITH_EDGE = 4;
    private static final int BOUNCED = 8;
    private static final int SAMPLES = 16;
    private static final int MOST_SAMPLES = 1 << 20;
    private static final long FIT_SAMPLES = (long) SAMPLES * MOST_SAMPLES;
    /** Numbers a pulse. */
    private static final int RECORD = 6;

    PulseLog() {
        super(RECORD);
    }

    void add(Pulse pulse) throws IOException {
        int code = (pulse.high ? HIGH : 0)
                + (pulse.startsWithEdge ? STARTS_WITH_EDGE : 0)
                + (pulse.endsWithEdge ? ENDS_WITH_EDGE : 0)
                + (pulse.bounced ? BOUNCED : 0);
        put(
                pulse.startSeconds,
                pulse.endSeconds,
                code
                        + (double) SAMPLES * Math.min(pulse.edgeSamples, MOST_SAMPLES - 1)
                        + (double) FIT_SAMPLES * Math.min(pulse.fitSamples, MOST_SAMPLES - 1),
                pulse.edgeSeconds,
                pulse.area,
                pulse.coreSeconds);
    }

    /** A pulse, without levels. */
    @Override
    Pulse of(double[] record) {
        return of(record, null);
    }

    // what a log does not hold is the same in all of its pulses
    @Override
    Pulse of(double[] record, Pulse spare) {
        Pulse pulse = spare == null ? new Pulse() : spare;
        long code = (long) record[2];
        pulse.startSeconds = record[0];
        pulse.endSeconds = record[1];
        pulse.high = (code & HIGH) != 0;
        pulse.startsWithEdge = (code & STARTS_WITH_EDGE) != 0;
        pulse.endsWithEdge = (code & ENDS_WITH_EDGE) != 0;
        pulse.bounced = (code & BOUNCED) != 0;
        pulse.edgeSamples = (int) (code / SAMPLES % MOST_SAMPLES);
        pulse.fitSamples = (int) (code / FIT_SAMPLES);
        pulse.edgeSeconds = record[3];
        pulse.area = record[4];
        pulse.coreSeconds = record[5];
        return pulse;
    }
}
