// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/** Third pass over a channel: what its pulses, found with provisional levels, tell of both states and of the period. */
final class LevelTally implements PulseSink, AutoCloseable {
    private final StateTally low;
    private final StateTally high;
    private final PeriodGuess period = new PeriodGuess();
    private final LevelLog log = new LevelLog();
    private double lastRise = Double.NaN;
    private long transitions;
    private final double[] edgeSamples = new double[2];
    private final long[] edges = new long[2];

    LevelTally(double low, double high) {
        this.low = new StateTally(low, high - low);
        this.high = new StateTally(high, low - high);
    }

    @Override
    public void pulse(Pulse pulse) throws IOException {
        log.add(pulse);
        (pulse.high ? high : low).add(pulse);
        if (!pulse.startsWithEdge) {
            return;
        }
        transitions++;
        int into = pulse.high ? 1 : 0;
        edgeSamples[into] += pulse.edgeSamples;
        edges[into]++;
        if (pulse.high) {
            if (!Double.isNaN(lastRise)) {
                period.add(pulse.startSeconds - lastRise);
            }
            lastRise = pulse.startSeconds;
        }
    }

    @Override
    public void plateau(boolean isHigh, double[] values, int from, int to) {
        (isHigh ? high : low).samples(values, from, to);
    }

    @Override
    public void segmentEnd() {
        lastRise = Double.NaN;
    }

    StateTally low() {
        return low;
    }

    StateTally high() {
        return high;
    }

    LevelLog log() {
        return log;
    }

    @Override
    public void close() throws IOException {
        log.close();
    }

    /** Mean number of samples between the reference levels on the way into a state. */
    double edgeSamples(boolean high) {
        int into = high ? 1 : 0;
        return edges[into] == 0 ? 0 : edgeSamples[into] / edges[into];
    }

    Droop droop() {
        return new Droop(low.droop(), high.droop(), low.uDroop(), high.uDroop());
    }

    long transitions() {
        return transitions;
    }

    double periodGuessSeconds() {
        return period.periodSeconds();
    }
}
