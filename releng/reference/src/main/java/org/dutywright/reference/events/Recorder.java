// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import java.io.IOException;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Channel;
import org.dutywright.simulation.Quantisation;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.Simulator;

/**
 * Records a scenario that was made without noise and converter: adds noise of either kind and rounds to codes.
 *
 * @param noise its kind
 * @param noiseShare its RMS as a share of a channel's swing
 * @param converter rounds and clips
 * @param seed of the noise
 */
record Recorder(NoiseKind noise, double noiseShare, Quantisation converter, long seed) {
    /** The capture, in memory. */
    Capture record(Scenario scenario) throws IOException {
        try (Capture ideal = Simulator.capture(scenario)) {
            Random random = new Random(seed);
            int count = Math.toIntExact(ideal.sampleCount());
            double[][] values = new double[scenario.channels().size()][count];
            for (int i = 0; i < values.length; i++) {
                ideal.samples().read(i, 0, values[i], 0, count);
                noise.addTo(values[i], noiseShare * scenario.channels().get(i).swingVolts(), random);
                for (int k = 0; k < count; k++) {
                    values[i][k] = converter.quantise(values[i][k]);
                }
            }
            return Captures.ofArrays(
                    ideal.channels().stream().map(Channel::name).toList(),
                    ideal.channels().stream().map(Channel::unit).toList(),
                    scenario.recording().sampleRateHz(),
                    ideal.timeBase().segments(),
                    values);
        }
    }
}
