// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Events of duty, edges and levels, put into a healthy signal at known places, are found there, and nothing else is. */
class LevelEventsTest {
    private static final double PERIOD = 5e-3;
    private static final double FIRST = 2.3e-3;

    private static TestSignal healthy(double duty) {
        return TestSignal.at(100e3, 1)
                .levels(0.5, 11.5)
                .ramp(30e-6)
                .noise(0.05, 42)
                .quantised(0.05)
                .carrier(200, FIRST, duty);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.25, 0.4, 0.7, 0.8})
    void a_pulse_that_does_not_reach_the_other_state_is_a_runt(double height) {
        TestSignal signal = healthy(0.3);
        TestSignal.Piece piece = signal.pieces().get(50);
        signal.pieces().set(50, new TestSignal.Piece(piece.riseSeconds(), piece.fallSeconds(), height));
        ChannelMeasurement channel = Measured.pwm(signal);
        PulseEvent event = Measured.only(channel, EventKind.RUNT);
        assertThat(event.startSeconds()).isCloseTo(piece.riseSeconds(), within(30e-6));
        assertThat(event.endSeconds()).isCloseTo(piece.fallSeconds(), within(30e-6));
        assertThat(channel.disturbedCount()).isEqualTo(1);
    }

    // four low pulses in a row are no level that has shifted, and none of them is an absent one
    @ParameterizedTest
    @CsvSource({"2, 0.45", "3, 0.45", "4, 0.45", "2, 0.7", "3, 0.7", "4, 0.7"})
    void runts_in_a_row_are_named_one_by_one(int count, double height) {
        TestSignal signal = healthy(0.3);
        for (int i = 50; i < 50 + count; i++) {
            TestSignal.Piece piece = signal.pieces().get(i);
            signal.pieces().set(i, new TestSignal.Piece(piece.riseSeconds(), piece.fallSeconds(), height));
        }
        ChannelMeasurement channel = Measured.pwm(signal);
        Measured.assertOnly(channel, EventKind.RUNT, count);
        // noise averages the quantisation step out; a share of the runts would be 0.03 and more
        assertThat(channel.levels().orElseThrow().high().value()).isCloseTo(11.5, within(0.01));
        for (int i = 0; i < count; i++) {
            assertThat(channel.events().get(i).startSeconds())
                    .isCloseTo(signal.pieces().get(50 + i).riseSeconds(), within(30e-6));
        }
    }

    @Test
    void three_absent_pulses_beside_a_runt_are_a_dropout() {
        TestSignal signal = healthy(0.3);
        TestSignal.Piece piece = signal.pieces().get(53);
        signal.pieces().set(53, new TestSignal.Piece(piece.riseSeconds(), piece.fallSeconds(), 0.45));
        signal.pieces().subList(50, 53).clear();
        PulseEvent event = Measured.only(Measured.pwm(signal), EventKind.DROPOUT);
        assertThat(event.detail()).startsWith("3 pulses are absent");
    }

    @ParameterizedTest
    @CsvSource({"0.3, 0.6", "0.7, 0.6", "0.3, 0.12", "0.7, 0.12"})
    void a_short_excursion_from_either_state_is_a_runt(double height, double at) {
        // into the pause (at 0.6 of the period) upwards, into the pulse (at 0.12) downwards
        TestSignal signal = healthy(0.3);
        double start = FIRST + (50 + at) * PERIOD;
        signal.pieces().add(new TestSignal.Piece(start, start + 100e-6, at > 0.3 ? height : -height));
        PulseEvent event = Measured.only(Measured.pwm(signal), EventKind.RUNT);
        assertThat(event.startSeconds()).isCloseTo(start, within(30e-6));
        assertThat(event.cycle()).hasValue(50);
    }

    /** The first samples are off both states, and which way the signal goes there is told only by those after them. */
    @ParameterizedTest
    @ValueSource(doubles = {0.25, 0.35, 0.65, 0.75})
    void a_recording_that_begins_on_an_edge_has_no_runt(double share) {
        TestSignal signal = TestSignal.at(100e3, 1)
                .levels(0.5, 11.5)
                .ramp(400e-6)
                .noise(0.05, 42)
                .carrier(200, (0.5 - share) * 400e-6 - 0.3 * PERIOD, 0.3);
        Measured.assertNone(Measured.pwm(signal));
    }

    @Test
    void a_single_sample_off_its_state_is_no_runt() {
        TestSignal signal = healthy(0.3).ramp(0);
        double start = FIRST + 50.6 * PERIOD;
        signal.pieces().add(new TestSignal.Piece(start, start + 9.9e-6, 0.4));
        assertThat(Measured.pwm(signal).eventCounts()).isEmpty();
    }

    @Test
    void a_jump_of_duty_on_a_single_channel_is_an_event_that_disturbs_nothing() {
        TestSignal signal = TestSignal.at(100e3, 1)
                .levels(0.5, 11.5)
                .ramp(30e-6)
                .noise(0.05, 42)
                .carrier(200, FIRST, t -> t < FIRST + 49.5 * PERIOD ? 0.2 : 0.27);
        ChannelMeasurement channel = Measured.pwm(signal);
        PulseEvent event = Measured.only(channel, EventKind.DUTY_JUMP);
        assertThat(event.startSeconds()).isCloseTo(FIRST + 50 * PERIOD, within(20e-6));
        assertThat(channel.disturbedCount()).isZero();
        assertThat(Measured.statistic(channel, "duty").max()).isCloseTo(27, within(0.2));
    }

    @Test
    void one_odd_cycle_is_one_jump() {
        TestSignal signal = healthy(0.3);
        TestSignal.Piece piece = signal.pieces().get(50);
        signal.pieces().set(50, new TestSignal.Piece(piece.riseSeconds(), piece.riseSeconds() + 0.5 * PERIOD, 1));
        assertThat(Measured.only(Measured.pwm(signal), EventKind.DUTY_JUMP).cycle())
                .hasValue(50);
    }

    private static ChannelPlan travel(double released, double pressed) {
        return new ChannelPlan(
                Optional.of(Role.PWM),
                Optional.empty(),
                Optional.of(new ChannelPlan.Travel(released, pressed)),
                OptionalDouble.empty());
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void a_fast_stroke_that_both_channels_share_has_no_jump(boolean travelKnown) {
        // full travel in 80 ms with a soft start and end: up to 6.9 points of duty a cycle on the second channel
        Capture capture = stroke(0);
        CaptureMeasurement measured = travelKnown
                ? Measured.of(capture, travel(10, 45), travel(20, 90))
                : Measured.of(capture, Measured.plan(Role.PWM), Measured.plan(Role.PWM));
        assertThat(measured.channels().get(0).eventCounts()).isEmpty();
        assertThat(measured.channels().get(1).eventCounts()).isEmpty();
    }

    private static double travelAt(double t) {
        double phase = Math.clamp((t - 0.5) / 0.08, 0, 1);
        return (1 - Math.cos(Math.PI * phase)) / 2;
    }

    private static Capture stroke(double stuckFrom) {
        TestSignal one = TestSignal.at(100e3, 1)
                .levels(0.5, 11.5)
                .ramp(30e-6)
                .noise(0.1, 42)
                .carrier(201, FIRST, t -> 0.1 + 0.35 * (stuckFrom > 0 ? 0 : travelAt(t)));
        TestSignal two = TestSignal.at(100e3, 1)
                .levels(0.5, 11.5)
                .ramp(30e-6)
                .noise(0.1, 43)
                .carrier(198.6, 1.1e-3, t -> 0.2 + 0.7 * travelAt(t));
        return Measured.capture(one, two);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void a_jump_that_the_other_channel_does_not_share_is_an_event(boolean travelKnown) {
        Capture capture = stroke(1);
        CaptureMeasurement measured = travelKnown
                ? Measured.of(capture, travel(10, 45), travel(20, 90))
                : Measured.of(capture, Measured.plan(Role.PWM), Measured.plan(Role.PWM));
        assertThat(measured.channels().get(0).eventCounts()).isEmpty();
        assertThat(measured.channels().get(1).eventCounts()).containsOnlyKeys(EventKind.DUTY_JUMP);
        assertThat(measured.channels().get(1).events())
                .allMatch(event -> event.startSeconds() > 0.5 && event.endSeconds() < 0.59);
    }

    @Test
    void a_transition_longer_than_the_limit_of_the_sensor_is_a_slow_edge() {
        TestSignal signal = healthy(0.3).ramps(t -> Math.abs(t - (FIRST + 50 * PERIOD)) < 1e-4 ? 250e-6 : 60e-6);
        ChannelPlan plan =
                new ChannelPlan(Optional.of(Role.PWM), Optional.empty(), Optional.empty(), OptionalDouble.of(100e-6));
        ChannelMeasurement channel =
                Measured.of(Measured.capture(signal), plan).channels().get(0);
        PulseEvent event = Measured.only(channel, EventKind.SLOW_EDGE);
        assertThat(event.startSeconds()).isCloseTo(FIRST + 50 * PERIOD, within(150e-6));
        assertThat(channel.disturbedCount()).isZero();
        assertThat(Measured.pwm(signal).eventCounts()).isEmpty();
    }

    @Test
    void without_a_limit_an_edge_of_a_tenth_of_the_period_is_slow() {
        TestSignal signal = healthy(0.3).ramps(t -> Math.abs(t - (FIRST + 50 * PERIOD)) < 1e-4 ? 800e-6 : 60e-6);
        Measured.only(Measured.pwm(signal), EventKind.SLOW_EDGE);
    }

    @ParameterizedTest
    @CsvSource({"0, 1.1", "0, -1.1", "1.1, 0", "-1.1, 0", "1.1, 1.1", "3, 0", "0, -3"})
    void a_level_that_moves_for_a_while_is_one_level_shift(double low, double high) {
        TestSignal signal = healthy(0.3).shifts(t -> t > 0.4 && t < 0.5 ? low : 0, t -> t > 0.4 && t < 0.5 ? high : 0);
        ChannelMeasurement channel = Measured.pwm(signal);
        PulseEvent event = Measured.only(channel, EventKind.LEVEL_SHIFT);
        assertThat(event.startSeconds()).isCloseTo(0.4, within(PERIOD));
        assertThat(event.endSeconds()).isCloseTo(0.5, within(PERIOD));
        assertThat(channel.disturbedCount()).isBetween(1L, 4L);
    }

    @ParameterizedTest
    @CsvSource({"0.2, 9.5", "0.45, 9.5", "0.8, 11.5"})
    void a_level_that_moves_for_good_is_one_level_shift_to_the_end(double from, double expected) {
        TestSignal signal = healthy(0.3).shifts(t -> 0, t -> t > from ? -2 : 0);
        ChannelMeasurement channel = Measured.pwm(signal);
        PulseEvent event = Measured.only(channel, EventKind.LEVEL_SHIFT);
        assertThat(event.startSeconds()).isCloseTo(from, within(PERIOD));
        assertThat(event.endSeconds()).isGreaterThan(1 - PERIOD);
        // the level of the larger part, as the shorth of the samples would say
        assertThat(channel.levels().orElseThrow().high().value()).isCloseTo(expected, within(0.01));
    }
}
