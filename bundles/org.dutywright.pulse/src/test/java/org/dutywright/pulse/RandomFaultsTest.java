// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Random mixtures of faults are found with their kind and within one cycle, and nothing else is. */
class RandomFaultsTest {
    static LongStream seeds() {
        return LongStream.rangeClosed(1, 60);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void five_faults_are_found_and_nothing_else(long seed) {
        FaultyRecording recording = new FaultyRecording(seed);
        Capture capture =
                Captures.ofArrays(List.of("signal1"), List.of("V"), 0, recording.sampleRateHz, recording.samples());
        ChannelMeasurement channel =
                Measured.of(capture, Measured.plan(recording.active)).channels().get(0);

        List<PulseEvent> left = new ArrayList<>(channel.events());
        for (FaultyRecording.Truth truth : recording.truth) {
            for (int i = 0; i < truth.count(); i++) {
                PulseEvent found = left.stream()
                        .filter(it -> matches(it, truth, recording.periodSeconds))
                        .findFirst()
                        .orElse(null);
                assertThat(found).as("%s among %s", truth, channel.events()).isNotNull();
                left.remove(found);
            }
        }
        assertThat(left).as("found beyond %s", recording.truth).isEmpty();
    }

    private static boolean matches(PulseEvent event, FaultyRecording.Truth truth, double cycle) {
        // a missing pulse ends where the next one is due, a cycle after the place where it was due itself
        return event.kind() == truth.kind()
                && event.startSeconds() >= truth.fromSeconds() - cycle
                && event.startSeconds() <= truth.toSeconds() + cycle
                && event.endSeconds() <= truth.toSeconds() + 1.05 * cycle;
    }
}
