// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Recordings that as a whole show no two states, though their parts do. */
class StretchTest {
    private static final double SECONDS = 4;

    private static TestSignal healthy(double noise) {
        return TestSignal.at(100e3, SECONDS)
                .levels(0.5, 11.5)
                .ramp(60e-6)
                .noise(noise, 8)
                .carrier(200, 1.3e-3, 0.3);
    }

    @ParameterizedTest
    @CsvSource({"0.02, 1.2", "0.2, 1.2", "0.2, 2.8"})
    void a_wire_that_floats_between_the_states_for_a_while_hides_no_pulse(double noise, double floating) {
        double[] samples = healthy(noise).samples();
        Random random = new Random(5);
        for (int i = 80_000; i < 80_000 + 100_000 * floating; i++) {
            samples[i] = 6 + noise * random.nextGaussian();
        }
        ChannelMeasurement channel = measured(samples);
        assertThat(channel.status()).isEqualTo(Status.OK);
        // that it left one state and never reached the other is a runt; that pulses are absent is a dropout: one of
        // them
        assertThat(channel.events())
                .hasSize(1)
                .allMatch(it -> it.kind() == EventKind.RUNT || it.kind() == EventKind.DROPOUT);
        assertThat(channel.events().get(0).startSeconds()).isCloseTo(0.8, within(5e-3));
        assertThat(channel.events().get(0).endSeconds()).isCloseTo(0.8 + floating, within(5e-3));
        assertThat(channel.levels().orElseThrow().low().value()).isCloseTo(0.5, within(0.01));
        assertThat(channel.levels().orElseThrow().high().value()).isCloseTo(11.5, within(0.01));
        assertThat(Measured.statistic(channel, "duty").mean()).isCloseTo(30, within(0.01));
        // 160 periods before, and what is left after it
        assertThat(channel.cycleCount() - channel.disturbedCount())
                .isBetween(795 - Math.round(200 * floating), 801 - Math.round(200 * floating));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.05, 0.5})
    void levels_that_drift_through_each_other_are_followed(double noise) {
        // 16 V in 4 s, with a swing of 11 V
        DoubleUnaryOperator moved = t -> 4 * t;
        ChannelMeasurement channel =
                measured(healthy(noise).shifts(moved, moved).samples());
        assertThat(channel.status()).isEqualTo(Status.OK);
        assertThat(channel.eventCounts()).containsOnlyKeys(EventKind.LEVEL_SHIFT);
        assertThat(channel.cycleCount()).isEqualTo(799);
        assertThat(Measured.statistic(channel, "duty").mean()).isCloseTo(30, within(0.01));
        for (Cycle cycle : Measured.cycles(channel)) {
            assertThat(cycle.dutyPercent()).isCloseTo(30, within(0.02 + noise));
        }
    }

    @Test
    void no_stretch_of_a_signal_without_states_passes_for_pulses() {
        for (long seed = 1; seed <= 20; seed++) {
            Random random = new Random(seed);
            double[] walk = new double[200_000];
            double[] chirp = new double[walk.length];
            double[] slow = new double[walk.length];
            double[] noise = new double[walk.length];
            for (int i = 1; i < walk.length; i++) {
                walk[i] = walk[i - 1] + 0.02 * random.nextGaussian();
                chirp[i] = 5 + 5 * Math.sin(1e-3 * i + 2e-7 * i * (double) i * seed);
                slow[i] = 5 + 5 * Math.sin(1e-5 * seed * i) + 0.01 * random.nextGaussian();
                noise[i] = 5 + random.nextGaussian();
            }
            // a walk may step from one place to another once, which is a transition, but no cycle
            assertThat(measured(walk).cycleCount()).isZero();
            for (double[] samples : List.of(chirp, slow, noise)) {
                ChannelMeasurement channel = measured(samples);
                assertThat(channel.status()).isEqualTo(Status.NO_SIGNAL);
                assertThat(channel.cycleCount()).isZero();
            }
        }
    }

    private static ChannelMeasurement measured(double[] samples) {
        Capture capture = Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 100e3, samples);
        return Measured.of(capture, Measured.plan(Role.PWM)).channels().get(0);
    }
}
