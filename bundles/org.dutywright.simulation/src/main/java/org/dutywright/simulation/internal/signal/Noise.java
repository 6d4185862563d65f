// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.List;
import java.util.random.RandomGenerator;
import org.dutywright.simulation.Fault;

/**
 * White Gaussian noise. It is drawn in blocks with a seed of their own, so a sample's noise does not depend on which
 * samples were asked for before.
 */
final class Noise {

    private static final int BLOCK = 4096;

    private final long seed;
    private final String channel;
    private final double rmsVolts;
    private final ActiveSpans<Fault.NoiseBurst> bursts;
    private final boolean silent;
    private long block = -1;
    private long nextInstant;
    private RandomGenerator random;

    Noise(long seed, String channel, double rmsVolts, List<Fault> faults, double recordingStart) {
        this.seed = seed;
        this.channel = channel;
        this.rmsVolts = rmsVolts;
        this.bursts = ActiveSpans.of(Fault.NoiseBurst.class, faults, recordingStart);
        this.silent = rmsVolts == 0 && faults.stream().noneMatch(Fault.NoiseBurst.class::isInstance);
        this.random = Randomness.of(seed, channel, "noise", 0);
    }

    /** The noise on one sample; the instants asked for must run forwards. */
    double voltsAt(long instant, double seconds) {
        if (silent) {
            return 0;
        }
        if (instant / BLOCK != block) {
            block = instant / BLOCK;
            nextInstant = block * BLOCK;
            random = Randomness.of(seed, channel, "noise", block);
        }
        while (nextInstant < instant) {
            random.nextGaussian();
            nextInstant++;
        }
        nextInstant++;
        return random.nextGaussian() * rmsAt(seconds);
    }

    private double rmsAt(double seconds) {
        List<Span<Fault.NoiseBurst>> active = bursts.at(seconds);
        if (active.isEmpty()) {
            return rmsVolts;
        }
        double variance = rmsVolts * rmsVolts;
        for (Span<Fault.NoiseBurst> burst : active) {
            variance += burst.what().rmsVolts() * burst.what().rmsVolts();
        }
        return Math.sqrt(variance);
    }
}
