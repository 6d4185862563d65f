// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReusedValuesTest {
    private static final int PULSES = 5_000;

    private static PulseLog log() throws IOException {
        Random random = new Random(3);
        PulseLog log = new PulseLog();
        for (int i = 0; i < PULSES; i++) {
            Pulse pulse = new Pulse();
            pulse.startSeconds = i;
            pulse.endSeconds = i + random.nextDouble();
            pulse.high = random.nextBoolean();
            pulse.startsWithEdge = random.nextBoolean();
            pulse.endsWithEdge = random.nextBoolean();
            pulse.edgeSamples = random.nextInt(100);
            pulse.fitSamples = random.nextInt(100);
            pulse.edgeSeconds = random.nextInt(4) == 0 ? Double.NaN : random.nextDouble();
            pulse.area = random.nextDouble();
            log.add(pulse);
        }
        return log;
    }

    private static String told(Pulse pulse) {
        return pulse.startSeconds + " " + pulse.endSeconds + " " + pulse.high + pulse.startsWithEdge
                + pulse.endsWithEdge + pulse.bounced + " " + pulse.edgeSamples + " " + pulse.fitSamples + " "
                + pulse.edgeSeconds + " " + pulse.area + " " + pulse.coreSeconds;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void aValueHoldsUntilAsManyAsAskedForHaveBeenRead(int kept) throws IOException {
        try (PulseLog log = log()) {
            SpillLog.Reader<Pulse> fresh = log.reader();
            SpillLog.Reader<Pulse> reused = log.reader(kept);
            Deque<Pulse> expected = new ArrayDeque<>();
            Deque<Pulse> held = new ArrayDeque<>();
            for (Pulse pulse = fresh.next(); pulse != null; pulse = fresh.next()) {
                expected.add(pulse);
                held.add(reused.next());
                if (held.size() > kept) {
                    expected.remove();
                    held.remove();
                }
                assertThat(held.stream().map(ReusedValuesTest::told))
                        .containsExactlyElementsOf(
                                expected.stream().map(ReusedValuesTest::told).toList());
            }
            assertThat(reused.next()).isNull();
        }
    }

    @Test
    void fewValuesAreSortedAsTheLibrarySortsThem() {
        Random random = new Random(5);
        for (int length = 0; length < 12; length++) {
            for (int i = 0; i < 200; i++) {
                double[] values = random.doubles(12, -1, 1)
                        .map(value -> random.nextInt(4) == 0 ? 0.5 : value)
                        .toArray();
                double[] expected = values.clone();
                Arrays.sort(expected, 0, length);
                FewValues.sort(values, length);
                assertThat(values).containsExactly(expected);
            }
        }
    }
}
