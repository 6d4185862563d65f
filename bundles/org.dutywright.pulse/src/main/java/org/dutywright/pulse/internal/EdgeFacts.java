// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.MedianSketch;

/**
 * How well single edges of a channel are known.
 *
 * @param noiseSeconds standard uncertainty of an edge's instant from noise
 * @param samplingSeconds standard uncertainty of an edge's instant from sampling and quantisation
 */
record EdgeFacts(double noiseSeconds, double samplingSeconds) {
    private static final int MOST_SAMPLES = 64;

    /** With fewer samples on an edge than this, the instant between them is only known to lie between them. */
    private static final int RESOLVED = 2;

    /**
     * From all transitions of a channel.
     *
     * @param stepSeconds distance of two samples
     * @param stampSeconds standard uncertainty of a time stamp
     * @param referenceShare part of the swing between the reference levels of the transition duration
     */
    static EdgeFacts of(PulseLog log, States states, double stepSeconds, double stampSeconds, double referenceShare)
            throws IOException {
        Direction rise = new Direction();
        Direction fall = new Direction();
        PulseLog.Reader reader = log.reader();
        for (Pulse pulse = reader.next(); pulse != null; pulse = reader.next()) {
            if (pulse.startsWithEdge && pulse.edgeSeconds > 0) {
                (pulse.high ? rise : fall).add(pulse);
            }
        }
        double noise = Math.max(states.levels().lowNoise(), states.levels().highNoise());
        double swing = states.thresholds().swing() * referenceShare;
        double random = Math.max(rise.noiseSeconds(noise, swing), fall.noiseSeconds(noise, swing));
        double sampling = Math.max(
                rise.samplingSeconds(stepSeconds, states.codeStep(), swing),
                fall.samplingSeconds(stepSeconds, states.codeStep(), swing));
        return new EdgeFacts(random, Math.hypot(sampling, stampSeconds));
    }

    /** Transitions of one direction. */
    private static final class Direction {
        private final MedianSketch seconds = new MedianSketch();
        private final long[] samples = new long[MOST_SAMPLES + 1];
        private double gains;

        void add(Pulse pulse) {
            seconds.add(pulse.edgeSeconds);
            samples[Math.min(MOST_SAMPLES, pulse.edgeSamples)]++;
            gains += pulse.fitSamples > 0 ? EdgeFit.NOISE_GAIN * EdgeFit.NOISE_GAIN / pulse.fitSamples : 1;
        }

        private boolean resolved() {
            long few = 0;
            for (int i = 0; i < RESOLVED; i++) {
                few += samples[i];
            }
            return seconds.count() > 0 && 2 * few < seconds.count();
        }

        double noiseSeconds(double noise, double swing) {
            return resolved() ? noise * seconds.median() / swing * Math.sqrt(gains / seconds.count()) : 0;
        }

        double samplingSeconds(double stepSeconds, double codeStep, double swing) {
            return resolved() ? codeStep / Math.sqrt(12) * seconds.median() / swing : stepSeconds / Math.sqrt(12);
        }
    }
}
