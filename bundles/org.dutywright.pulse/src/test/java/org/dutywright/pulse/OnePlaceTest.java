// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.dutywright.pulse.TestSignal.Piece;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One place has one event: what follows from a fault at the same place is no event of its own. */
class OnePlaceTest {
    private static final double PERIOD = 5e-3;
    private static final double RAMP = 30e-6;

    private static TestSignal healthy(DoubleUnaryOperator duty) {
        return TestSignal.at(100e3, 0.6)
                .ramp(RAMP)
                .noise(0.05, 3)
                .quantised(0.05)
                .carrier(200, 2.3e-3, duty);
    }

    /** A slow edge begins when the others do, so its middle is late by half of what it takes longer. */
    @ParameterizedTest
    @ValueSource(doubles = {0.18, 0.25, 0.35})
    void the_odd_periods_beside_a_late_slow_edge_are_its_own(double share) {
        TestSignal signal = healthy(t -> 0.5);
        Piece piece = signal.pieces().get(50);
        double late = piece.riseSeconds() + (share * PERIOD - RAMP) / 2;
        signal.pieces().set(50, new Piece(late, piece.fallSeconds(), 1));
        signal.ramps(edge -> edge == late ? share * PERIOD : RAMP);

        ChannelMeasurement channel = Measured.pwm(signal);

        assertThat(Measured.only(channel, EventKind.SLOW_EDGE).startSeconds())
                .isCloseTo(piece.riseSeconds(), within(PERIOD));
        // both cycles are further off than 5 %, so they stay out of the statistics
        assertThat(channel.disturbedCount()).isEqualTo(2);
    }

    @Test
    void the_odd_duty_beside_a_late_slow_edge_is_its_own() {
        TestSignal signal = healthy(t -> 0.5);
        Piece piece = signal.pieces().get(50);
        double late = piece.fallSeconds() + (0.25 * PERIOD - RAMP) / 2;
        signal.pieces().set(50, new Piece(piece.riseSeconds(), late, 1));
        signal.ramps(edge -> edge == late ? 0.25 * PERIOD : RAMP);

        Measured.only(Measured.pwm(signal), EventKind.SLOW_EDGE);
    }

    /** Where all edges are slow, as behind a weak pull-up, none is late: a jump remains a jump. */
    @Test
    void slow_edges_everywhere_hide_no_jump() {
        TestSignal signal = healthy(t -> 0.5);
        Piece piece = signal.pieces().get(50);
        signal.pieces().set(50, new Piece(piece.riseSeconds(), piece.fallSeconds() + 0.08 * PERIOD, 1));
        signal.ramp(0.2 * PERIOD);

        ChannelMeasurement channel = Measured.pwm(signal);

        assertThat(channel.eventCounts()).containsEntry(EventKind.DUTY_JUMP, 1L);
        assertThat(channel.eventCounts().keySet()).containsExactlyInAnyOrder(EventKind.DUTY_JUMP, EventKind.SLOW_EDGE);
    }

    @Test
    void a_pulse_cut_by_an_open_wire_belongs_to_the_dropout() {
        TestSignal signal = healthy(t -> 0.5);
        Piece before = signal.pieces().get(49);
        Piece after = signal.pieces().get(58);
        signal.pieces().set(49, new Piece(before.riseSeconds(), before.riseSeconds() + 0.2 * PERIOD, 1));
        signal.pieces().set(58, new Piece(after.riseSeconds() + 0.2 * PERIOD, after.fallSeconds(), 1));
        signal.pieces().subList(50, 58).clear();

        Measured.only(Measured.pwm(signal), EventKind.DROPOUT);
    }

    @Test
    void a_cycle_cut_by_a_stuck_level_belongs_to_it() {
        TestSignal signal = healthy(t -> 0.4);
        Piece last = signal.pieces().get(80);
        signal.pieces().subList(80, signal.pieces().size()).clear();
        signal.pieces().add(new Piece(last.riseSeconds() - 0.3 * PERIOD, 1, 1));

        Measured.only(Measured.pwm(signal), EventKind.STUCK_HIGH);
    }

    /** 90 points in 80 ms are 5.6 points a cycle, above the limit of a jump, but they go on. */
    @Test
    void a_stroke_of_a_lone_channel_is_a_movement_and_no_jump() {
        TestSignal signal = healthy(t -> 0.05 + 0.9 * Math.clamp((t - 0.2) / 0.08, 0, 1));

        Measured.assertNone(Measured.pwm(signal));
    }

    @Test
    void a_lone_channel_that_jumps_and_stays_has_a_jump() {
        TestSignal signal = healthy(t -> t < 0.3 ? 0.3 : 0.4);

        assertThat(Measured.only(Measured.pwm(signal), EventKind.DUTY_JUMP).startSeconds())
                .isCloseTo(0.3, within(PERIOD));
    }
}
