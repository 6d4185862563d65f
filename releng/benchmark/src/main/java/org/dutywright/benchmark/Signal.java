// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.util.SplittableRandom;

/** A pulse-width signal with noise as a converter of 16 bits sees it: low 1000, high 30000 counts, by formula from a seed. */
final class Signal {
    /** Volts a count. */
    static final double VOLTS_A_COUNT = 5.0 / 32_768;

    private static final double CARRIER_HZ = 200;
    private static final int LOW = 1000;
    private static final int HIGH = 30_000;

    private final double sampleRateHz;
    private final SplittableRandom random = new SplittableRandom(20_261_125);
    private long sample;

    Signal(double sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
    }

    /** The next sample, in counts. */
    int next() {
        double phase = sample++ * CARRIER_HZ / sampleRateHz;
        double duty = 0.1 + 0.4 * (0.5 + 0.5 * Math.sin(phase * 0.01));
        int level = phase - Math.floor(phase) < duty ? HIGH : LOW;
        return level + random.nextInt(601) - 300;
    }
}
