// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.PulseSettings;
import org.junit.jupiter.api.Test;

class LevelFinderTest {
    @Test
    void a_droop_is_no_noise() throws IOException {
        // each pulse of 150 samples falls from 10 V by 2 V in a straight line
        Random random = new Random(9);
        double[] values = new double[100_000];
        for (int i = 0; i < values.length; i++) {
            double clean = i % 500 < 150 ? 10 - 2 * (i % 500) / 150.0 : 0;
            values[i] = clean + 0.05 * random.nextGaussian();
        }
        Capture capture = Captures.ofArrays(List.of("a"), List.of("V"), 0, 100e3, values);
        ChannelSource source = new ChannelSource(capture, 0, Progress.NONE);
        SampleSurvey survey = SampleSurvey.of(source.open(), new Windows(values.length));
        States states =
                new LevelFinder(source, survey, PulseSettings.defaults()).find().orElseThrow();
        try (LevelTrack track = states.track()) {
            assertThat(track.moves()).isTrue();
            // 200 slopes of 2 V, each known to 0.05 V sqrt(12 / 150); the share is one of the provisional swing, which
            // the
            // droop leaves uncertain by some percent
            assertThat(states.droop().high() * states.thresholds().swing()).isCloseTo(2, within(0.06));
            assertThat(states.droop().low()).isCloseTo(0, within(0.002));
            // with the droop in it the standard deviation would be 0.58 V; that of 30,000 samples is known to 0.4 %
            assertThat(states.levels().highNoise()).isCloseTo(0.05, within(0.001));
            assertThat(states.levels().lowNoise()).isCloseTo(0.05, within(0.001));
        }
    }
}
