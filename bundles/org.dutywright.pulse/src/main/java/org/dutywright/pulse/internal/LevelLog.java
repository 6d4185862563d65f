// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/** What the pulses of a channel told of their levels, one by one and in order, in constant memory. */
final class LevelLog extends SpillLog<LevelLog.Told> {
    private static final int WIDTH = 5;
    private static final int HIGH = 1;
    private static final int PLATEAU = 2;
    private static final int NEAR_EDGES = 4;

    /**
     * One pulse.
     *
     * @param startSample sample that showed the transition into it
     * @param endSample sample that showed the transition out of it
     * @param high whether it is one of the high state
     * @param plateau whether it has samples outside transitions and their aberrations
     * @param nearEdges whether some of these lie within the aberrations, because the pulse is short
     * @param level mean of those samples
     * @param trend slope of the line through them, a sample
     */
    record Told(
            long startSample,
            long endSample,
            boolean high,
            boolean plateau,
            boolean nearEdges,
            double level,
            double trend) {
        long samples() {
            return endSample - startSample;
        }
    }

    LevelLog() {
        super(WIDTH);
    }

    void add(Pulse pulse) throws IOException {
        int code =
                (pulse.high ? HIGH : 0) + (pulse.plateauSamples > 0 ? PLATEAU : 0) + (pulse.nearEdges ? NEAR_EDGES : 0);
        put((double) pulse.startSample, (double) pulse.endSample, code, pulse.plateau, pulse.plateauTrend);
    }

    @Override
    Told of(double[] record) {
        int code = (int) record[2];
        return new Told(
                (long) record[0],
                (long) record[1],
                (code & HIGH) != 0,
                (code & PLATEAU) != 0,
                (code & NEAR_EDGES) != 0,
                record[3],
                record[4]);
    }
}
