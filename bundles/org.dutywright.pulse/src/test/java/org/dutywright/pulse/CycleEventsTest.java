// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Events of pulses and cycles, put into a healthy signal at known places, are found there, and nothing else is. */
class CycleEventsTest {
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
    @EnumSource(ActiveLevel.class)
    void a_healthy_signal_has_no_event(ActiveLevel active) {
        ChannelMeasurement channel = Measured.of(Measured.capture(healthy(0.3)), Measured.plan(active))
                .channels()
                .get(0);
        assertThat(channel.eventCounts()).isEmpty();
        assertThat(channel.disturbedCount()).isZero();
        assertThat(channel.cycleCount()).isEqualTo(199);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void an_absent_pulse_is_a_missing_pulse_where_its_edge_was_due(int absent) {
        TestSignal signal = healthy(0.3);
        for (int i = 0; i < absent; i++) {
            signal.pieces().remove(50);
        }
        ChannelMeasurement channel = Measured.pwm(signal);
        Measured.assertOnly(channel, EventKind.MISSING_PULSE, absent);
        for (int i = 0; i < absent; i++) {
            assertThat(channel.events().get(i).startSeconds()).isCloseTo(FIRST + (50 + i) * PERIOD, within(20e-6));
            assertThat(channel.events().get(i).cycle()).hasValue(49);
        }
        assertThat(channel.disturbedCount()).isEqualTo(1);
        assertThat(channel.cycleCount()).isEqualTo(199 - absent);
    }

    @ParameterizedTest
    @CsvSource({"3", "10", "40"})
    void three_absent_pulses_or_more_are_a_dropout_between_two_transitions(int absent) {
        TestSignal signal = healthy(0.3);
        for (int i = 0; i < absent; i++) {
            signal.pieces().remove(50);
        }
        PulseEvent event = Measured.only(Measured.pwm(signal), EventKind.DROPOUT);
        assertThat(event.startSeconds()).isCloseTo(FIRST + 49.3 * PERIOD, within(20e-6));
        assertThat(event.endSeconds()).isCloseTo(FIRST + (50 + absent) * PERIOD, within(20e-6));
        assertThat(event.detail()).startsWith(absent + " pulses are absent");
    }

    @Test
    void a_dropout_to_the_active_level_lies_between_its_transitions_too() {
        TestSignal signal = healthy(0.3);
        for (int i = 0; i < 6; i++) {
            signal.pieces().remove(50);
        }
        signal.pieces().set(49, new TestSignal.Piece(FIRST + 49 * PERIOD, FIRST + 55.6 * PERIOD, 1));
        PulseEvent event = Measured.only(Measured.pwm(signal), EventKind.DROPOUT);
        assertThat(event.startSeconds()).isCloseTo(FIRST + 49 * PERIOD, within(20e-6));
        assertThat(event.endSeconds()).isCloseTo(FIRST + 55.6 * PERIOD, within(20e-6));
    }

    @Test
    void a_dropout_with_a_restart_out_of_phase_is_one_event() {
        TestSignal signal =
                TestSignal.at(100e3, 1).levels(0.5, 11.5).noise(0.05, 3).ramp(30e-6);
        signal.carrier(200, FIRST, 0.3);
        signal.pieces().removeIf(it -> it.riseSeconds() > 0.4);
        for (double t = 0.4371; t < 1; t += PERIOD) {
            signal.pieces().add(new TestSignal.Piece(t, t + 0.3 * PERIOD, 1));
        }
        Measured.only(Measured.pwm(signal), EventKind.DROPOUT);
    }

    @Test
    void a_signal_that_stops_is_stuck_from_its_last_transition() {
        TestSignal signal = healthy(0.3);
        signal.pieces().removeIf(it -> it.riseSeconds() > 0.7);
        PulseEvent event = Measured.only(Measured.pwm(signal), EventKind.STUCK_LOW);
        assertThat(event.startSeconds()).isCloseTo(FIRST + 139.3 * PERIOD, within(20e-6));
        assertThat(event.endSeconds()).isCloseTo(1, within(20e-6));
        assertThat(event.cycle()).isEmpty();

        TestSignal high = healthy(0.3);
        high.pieces().removeIf(it -> it.riseSeconds() > 0.7);
        high.pieces().add(new TestSignal.Piece(0.7023, 2, 1));
        assertThat(Measured.only(Measured.pwm(high), EventKind.STUCK_HIGH).startSeconds())
                .isCloseTo(0.7023, within(20e-6));
    }

    @Test
    void a_signal_that_stops_for_less_than_four_periods_at_the_end_has_no_event() {
        TestSignal signal = healthy(0.3);
        signal.pieces().removeIf(it -> it.riseSeconds() > 1 - 3.5 * PERIOD);
        assertThat(Measured.pwm(signal).eventCounts()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"1, true", "3, true", "1, false", "2, false"})
    void further_transitions_right_after_an_edge_are_its_bounce(int times, boolean leading) {
        TestSignal signal = healthy(0.3).ramp(0);
        TestSignal.Piece piece = signal.pieces().get(50);
        double edge = leading ? piece.riseSeconds() : piece.fallSeconds();
        for (int i = 0; i < times; i++) {
            double back = edge + 40e-6 + i * 60e-6;
            signal.pieces().add(new TestSignal.Piece(back, back + 30e-6, leading ? -1 : 1));
        }
        ChannelMeasurement channel = Measured.pwm(signal);
        PulseEvent event = Measured.only(channel, EventKind.BOUNCE);
        assertThat(event.startSeconds()).isCloseTo(edge + 40e-6, within(20e-6));
        assertThat(event.cycle()).hasValue(50);
        assertThat(channel.disturbedCount()).isEqualTo(1);
        // the edge keeps the instant of its first transition
        Cycle cycle = Measured.cycles(channel).get(50);
        assertThat(cycle.startSeconds()).isCloseTo(piece.riseSeconds(), within(20e-6));
        assertThat(cycle.dutyPercent()).isCloseTo(30, within(0.5));
    }

    @Test
    void bounces_at_every_edge_do_not_shorten_the_period() {
        TestSignal signal = healthy(0.3).ramp(0);
        for (TestSignal.Piece piece : List.copyOf(signal.pieces())) {
            double back = piece.riseSeconds() + 40e-6;
            signal.pieces().add(new TestSignal.Piece(back, back + 30e-6, -1));
            signal.pieces().add(new TestSignal.Piece(back + 60e-6, back + 90e-6, -1));
        }
        ChannelMeasurement channel = Measured.pwm(signal);
        assertThat(channel.medianPeriodSeconds().orElseThrow()).isCloseTo(PERIOD, within(20e-6));
        Measured.assertOnly(channel, EventKind.BOUNCE, 200);
    }

    @ParameterizedTest
    @CsvSource({"0.45", "0.6", "0.8", "0.5"})
    void a_pulse_too_many_is_an_extra_pulse(double at) {
        TestSignal signal = healthy(0.3);
        double start = FIRST + (50 + at) * PERIOD;
        signal.pieces().add(new TestSignal.Piece(start, start + 0.06 * PERIOD, 1));
        ChannelMeasurement channel = Measured.pwm(signal);
        PulseEvent event = Measured.only(channel, EventKind.EXTRA_PULSE);
        assertThat(event.startSeconds()).isCloseTo(start, within(20e-6));
        assertThat(channel.disturbedCount()).isEqualTo(2);
        assertThat(channel.cycleCount()).isEqualTo(200);
    }

    @Test
    void a_gap_in_a_pulse_is_an_extra_pulse_as_well() {
        TestSignal signal = healthy(0.6);
        double start = FIRST + 50.3 * PERIOD;
        signal.pieces().add(new TestSignal.Piece(start, start + 0.06 * PERIOD, -1));
        ChannelMeasurement channel = Measured.pwm(signal);
        PulseEvent event = Measured.only(channel, EventKind.EXTRA_PULSE);
        assertThat(event.startSeconds()).isCloseTo(start, within(20e-6));
        assertThat(channel.disturbedCount()).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.6, 0.9, 1.08, 1.4})
    void a_cycle_of_another_length_is_a_period_excursion(double periods) {
        TestSignal signal = healthy(0.3);
        double late = (periods - 1) * PERIOD;
        for (int i = 51; i < signal.pieces().size(); i++) {
            TestSignal.Piece piece = signal.pieces().get(i);
            signal.pieces().set(i, new TestSignal.Piece(piece.riseSeconds() + late, piece.fallSeconds() + late, 1));
        }
        PulseEvent event = Measured.only(Measured.pwm(signal), EventKind.PERIOD_EXCURSION);
        assertThat(event.startSeconds()).isCloseTo(FIRST + 50 * PERIOD, within(20e-6));
        assertThat(event.cycle()).hasValue(50);
    }

    @Test
    void a_period_within_five_percent_is_none() {
        TestSignal signal = healthy(0.3);
        for (int i = 51; i < signal.pieces().size(); i++) {
            TestSignal.Piece piece = signal.pieces().get(i);
            signal.pieces().set(i, new TestSignal.Piece(piece.riseSeconds() + 0.2e-3, piece.fallSeconds() + 0.2e-3, 1));
        }
        assertThat(Measured.pwm(signal).eventCounts()).isEmpty();
    }
}
