// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.junit.jupiter.api.Test;

class ThreadsTest {
    private static final int SAMPLES = 300_000;

    private static double[] noisyPulses(double periodSamples, double duty, long seed) {
        Random random = new Random(seed);
        double[] values = new double[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            double phase = i / periodSamples % 1;
            values[i] = (phase < duty ? 5 : 0) + 0.1 * random.nextGaussian();
        }
        return values;
    }

    private static List<String> everythingMeasured(Capture capture, int threads) throws IOException {
        List<String> all = new ArrayList<>();
        try (CaptureMeasurement measured = CaptureMeasurer.withInstalled()
                .withThreads(threads)
                .measure(capture, Map.of(), PulseSettings.defaults(), Progress.NONE)) {
            all.add(measured.fitness().toString());
            for (ChannelMeasurement channel : measured.channels()) {
                all.add(channel.levels() + " " + channel.level() + " " + channel.results() + " " + channel.events());
                CycleTable.Cursor cursor = channel.cycles().cursor();
                for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
                    all.add(cycle.toString());
                }
            }
        }
        return all;
    }

    @Test
    void resultsAreTheSameToTheLastBitForAnyNumberOfThreads() throws IOException {
        try (Capture capture = Captures.ofArrays(
                List.of("signal1", "signal2", "supply", "signal3"),
                List.of("V", "V", "V", "V"),
                0,
                100e3,
                noisyPulses(500, 0.2, 1),
                noisyPulses(487.3, 0.8, 2),
                noisyPulses(1e9, 0.5, 3),
                noisyPulses(250, 0.5, 4))) {
            List<String> one = everythingMeasured(capture, 1);
            assertThat(one).hasSizeGreaterThan(2000);
            for (int threads = 2; threads < 6; threads++) {
                assertThat(everythingMeasured(capture, threads)).isEqualTo(one);
            }
        }
    }
}
