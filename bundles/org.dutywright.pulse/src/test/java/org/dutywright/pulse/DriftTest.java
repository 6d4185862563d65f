// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Levels that move: the edges follow them, the levels that are told stay those of the larger part. */
class DriftTest {
    private static final double PERIOD = 5e-3;

    private static TestSignal signal(double ramp, double noise, DoubleUnaryOperator duty) {
        return TestSignal.at(100e3, 2)
                .levels(0.5, 11.5)
                .ramp(ramp)
                .noise(noise, 3)
                .carrier(200, 1.3e-3, duty);
    }

    /**
     * A first-order high pass, as AC coupling is one: exact at the samples for a signal that is straight between them. It
     * has settled on the mean of the first second.
     */
    private static Capture coupled(TestSignal signal, double tau) {
        double[] direct = signal.samples();
        double[] seen = new double[direct.length];
        double step = 1 / signal.sampleRateHz();
        double kept = Math.exp(-step / tau);
        double gain = (1 - kept) * tau / step;
        seen[0] = direct[0] - Arrays.stream(direct).limit(100_000).average().orElseThrow();
        for (int i = 1; i < direct.length; i++) {
            seen[i] = kept * seen[i - 1] + gain * (direct[i] - direct[i - 1]);
        }
        return Captures.ofArrays(List.of("signal1"), List.of("V"), 0, signal.sampleRateHz(), seen);
    }

    private static ChannelMeasurement measured(Capture capture) {
        return Measured.of(capture, Measured.plan(Role.PWM)).channels().get(0);
    }

    /** Largest error of the duty of an undisturbed cycle, in points; a few at the start may be left out. */
    private static double worstDuty(ChannelMeasurement channel, DoubleUnaryOperator duty, int firstCycle) {
        double worst = 0;
        for (Cycle cycle : Measured.cycles(channel)) {
            if (!cycle.disturbed() && cycle.index() >= firstCycle) {
                worst = Math.max(worst, Math.abs(cycle.dutyPercent() - 100 * duty.applyAsDouble(cycle.startSeconds())));
            }
        }
        return worst;
    }

    // Timed at the levels of the whole recording, 4 V of 11 V on edges of 100 us would be 1.4 points of duty.
    @ParameterizedTest
    @CsvSource({"1.1", "-1.1", "2", "-2", "3", "4", "-4"})
    void a_ground_that_shifts_for_a_while_moves_no_edge_and_is_reported(double shift) {
        DoubleUnaryOperator moved = t -> t > 0.803 && t < 1.4 ? shift : 0;
        ChannelMeasurement channel = Measured.pwm(signal(100e-6, 0.05, t -> 0.3).shifts(moved, moved));
        PulseEvent event = Measured.only(channel, EventKind.LEVEL_SHIFT);
        assertThat(event.startSeconds()).isCloseTo(0.803, within(PERIOD));
        assertThat(event.endSeconds()).isCloseTo(1.4, within(PERIOD));
        assertThat(channel.cycleCount()).isEqualTo(399);
        // 0.05 V of noise is 0.1 us at a fitted edge, 0.01 points; where the shift begins or ends within a pulse, its
        // level
        // is known less well: a tenth of the shift
        assertThat(worstDuty(channel, t -> 0.3, 0)).isLessThan(0.12);
        double all = Measured.statistic(channel, "duty").mean();
        assertThat(all).isCloseTo(30, within(0.003));
        assertThat(Measured.single(channel, "transition.rise").value()).isCloseTo(80e-6, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"100e-6, 0", "100e-6, 0.05", "400e-6, 0.05"})
    void a_slow_drift_of_half_the_swing_moves_no_edge(double ramp, double noise) {
        DoubleUnaryOperator moved = t -> 3 * t;
        ChannelMeasurement channel = Measured.pwm(signal(ramp, noise, t -> 0.3).shifts(moved, moved));
        assertThat(channel.eventCounts()).containsOnlyKeys(EventKind.LEVEL_SHIFT);
        assertThat(channel.cycleCount()).isEqualTo(399);
        assertThat(worstDuty(channel, t -> 0.3, 3)).isLessThan(noise > 0 ? 0.08 : 0.005);
        assertThat(Measured.statistic(channel, "period").mean()).isCloseTo(PERIOD, within(1e-8));
        assertThat(Measured.single(channel, "transition.fall").value()).isCloseTo(0.8 * ramp, within(0.01 * ramp));
    }

    // AC coupling: each level runs towards zero, by up to a fifth of the swing within a pulse.
    @ParameterizedTest
    @CsvSource({"0.1, 0", "0.03, 0", "0.016, 0", "0.1, 0.05", "0.03, 0.05", "0.016, 0.05", "0.016, 0.3"})
    void behind_ac_coupling_duty_and_period_come_out_right(double tau, double noise) {
        ChannelMeasurement channel = measured(coupled(signal(100e-6, noise, t -> 0.3), tau));
        assertThat(channel.eventCounts()).isEmpty();
        assertThat(channel.cycleCount()).isEqualTo(399);
        // the trend within a pulse is taken for a straight line, which leaves 0.1 us; the mean of the noise 0.004
        // points
        assertThat(Measured.statistic(channel, "duty").mean()).isCloseTo(30, within(noise > 0 ? 0.012 : 0.002));
        assertThat(worstDuty(channel, t -> 0.3, 0)).isLessThan(0.01 + 0.7 * noise);
        assertThat(Measured.statistic(channel, "period").mean()).isCloseTo(PERIOD, within(2e-8));
        // the first pulses come before the coupling has settled on its cycle
        assertThat(Measured.single(channel, "transition.rise").value()).isCloseTo(80e-6, within(1e-6));
        assertThat(Measured.single(channel, "transition.fall").value()).isCloseTo(80e-6, within(1e-6));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.03, 0.016})
    void behind_ac_coupling_a_stroke_comes_out_right_while_the_levels_move(double tau) {
        DoubleUnaryOperator duty = t -> 0.1 + 0.35 * Math.clamp((t - 1) / 0.08, 0, 1);
        ChannelMeasurement channel = measured(coupled(signal(100e-6, 0, duty), tau));
        assertThat(channel.eventCounts()).containsOnlyKeys(EventKind.LEVEL_SHIFT);
        assertThat(channel.cycleCount()).isEqualTo(399);
        assertThat(worstDuty(channel, duty, 0)).isLessThan(0.01);
    }

    @Test
    void pulses_too_short_to_show_their_level_move_with_the_other_state() {
        // at 10 % a pulse of 500 us has edges of 450 us: its top is never outside them
        DoubleUnaryOperator duty = t -> 0.1 + 0.35 * Math.clamp((t - 1) / 0.08, 0, 1);
        ChannelMeasurement channel = measured(coupled(signal(450e-6, 0, duty), 0.1));
        assertThat(channel.cycleCount()).isEqualTo(399);
        // timed at the level that the long pulses have later it would be 2.5 points
        assertThat(worstDuty(channel, duty, 0)).isLessThan(0.05);
    }

    @Test
    void runts_do_not_pull_the_levels_along() {
        TestSignal signal = signal(60e-6, 0.05, t -> 0.3).shifts(t -> t > 0.6 ? 1.5 : 0, t -> t > 0.6 ? 1.5 : 0);
        for (int i = 200; i < 204; i++) {
            TestSignal.Piece piece = signal.pieces().get(i);
            signal.pieces().set(i, new TestSignal.Piece(piece.riseSeconds(), piece.fallSeconds(), 0.7));
        }
        ChannelMeasurement channel = Measured.pwm(signal);
        assertThat(channel.eventCounts()).isEqualTo(Map.of(EventKind.RUNT, 4L, EventKind.LEVEL_SHIFT, 1L));
        assertThat(worstDuty(channel, t -> 0.3, 0)).isLessThan(0.05);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.7, 1.05, 2, -0.7})
    void levels_told_are_those_of_the_larger_part(double shift) {
        DoubleUnaryOperator moved = t -> t > 1.3 ? shift : 0;
        StateLevels levels = Measured.pwm(signal(60e-6, 0.05, t -> 0.3).shifts(moved, moved))
                .levels()
                .orElseThrow();
        // 0.05 V of noise over the cube root of some 40,000 samples: 1.5 mV; here four times that
        assertThat(levels.low().value()).isCloseTo(0.5, within(0.006));
        assertThat(levels.high().value()).isCloseTo(11.5, within(0.006));
    }

    @Test
    void a_state_with_bumps_has_the_level_of_its_larger_part() {
        // a fifth of every pulse is 0.6 V higher, which would move the mean by 0.12 V
        TestSignal signal = signal(60e-6, 0.02, t -> 0.5)
                .shifts(t -> 0, t -> (t - 1.3e-3) % PERIOD > 1e-3 && (t - 1.3e-3) % PERIOD < 1.5e-3 ? 0.6 : 0);
        StateLevels levels = Measured.pwm(signal).levels().orElseThrow();
        assertThat(levels.high().value()).isCloseTo(11.5, within(0.005));
        assertThat(Math.abs(levels.high().value() - 11.5))
                .isLessThan(3 * levels.high().u());
        assertThat(levels.low().value()).isCloseTo(0.5, within(0.001));
    }

    @Test
    void an_overshoot_is_counted_from_the_level_of_the_moment() {
        DoubleUnaryOperator moved = t -> 3 * t;
        ChannelMeasurement channel = Measured.pwm(signal(100e-6, 0, t -> 0.3).shifts(moved, moved));
        for (String id : channel.results().keySet()) {
            if (id.startsWith("overshoot")) {
                // a trapezoid has none; the drift within the region of an edge is 0.01 % of the swing
                assertThat(Measured.statistic(channel, id).max()).isLessThan(0.1);
            }
        }
    }
}
