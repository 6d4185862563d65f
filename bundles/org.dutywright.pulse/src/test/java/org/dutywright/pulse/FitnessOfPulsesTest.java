// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;

import org.dutywright.pulse.Fitness.Grade;
import org.junit.jupiter.api.Test;

class FitnessOfPulsesTest {
    // 200 Hz for 2 s at 50 kHz: 250 samples a period, 400 edges, 399 cycles. From 1.0 to 1.05 s the pulses are 60 us, 3
    // samples, long.
    @Test
    void aFewShortPulsesAreWhatTheSignalDidAndNotTheRecordingsFault() {
        Fitness fitness =
                samplesPerPulse(TestSignal.at(50_000, 2).carrier(200, 0.001, t -> t > 1 && t < 1.05 ? 0.012 : 0.3));
        assertThat(fitness.grade()).isEqualTo(Grade.GOOD);
        assertThat(fitness.reason()).contains("3.0 samples").contains("10 of 399 cycles have fewer than 5");
    }

    @Test
    void manyShortPulsesMakeTheRecordingPoor() {
        Fitness fitness = samplesPerPulse(TestSignal.at(5_000, 2).carrier(200, 0.00107, 0.12));
        assertThat(fitness.grade()).isEqualTo(Grade.POOR);
        assertThat(fitness.reason()).contains("record at");
    }

    @Test
    void aSignalOfTwoValuesOnlyHasTwoStates() {
        ChannelMeasurement channel = Measured.pwm(TestSignal.at(50_000, 2).carrier(200, 0.001, 0.3));
        assertThat(channel.status()).isEqualTo(Status.OK);
        assertThat(channel.levels().orElseThrow().low().value()).isEqualTo(0.5);
        assertThat(channel.levels().orElseThrow().high().value()).isEqualTo(11.5);
    }

    private static Fitness samplesPerPulse(TestSignal signal) {
        CaptureMeasurement measurement = Measured.of(Measured.capture(signal), Measured.plan(Role.PWM));
        assertThat(measurement.fitness())
                .as("%s", measurement.channels())
                .extracting(Fitness::item)
                .contains("signal1.samplesPerPulse");
        return measurement.fitness().stream()
                .filter(it -> it.item().equals("signal1.samplesPerPulse"))
                .findFirst()
                .orElseThrow();
    }
}
