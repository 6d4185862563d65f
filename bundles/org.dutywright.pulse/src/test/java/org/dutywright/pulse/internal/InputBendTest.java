// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How far a chord may miss a level, against signals whose instants are known in closed form. */
class InputBendTest {
    private static final double STEP = 1e-5;

    /** Samples at 0, 1, 2 and 3 steps; the level is passed between 1 and 2. */
    private static double bend(DoubleUnaryOperator signal, double level) {
        InputBend bend = new InputBend();
        for (int i = 0; i < 4; i++) {
            bend.add(i * STEP, signal.applyAsDouble(i));
        }
        return bend.seconds(level);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-3, 0.5, 7})
    void a_straight_line_is_its_own_chord(double slope) {
        // rounding of a step only
        assertThat(bend(x -> 1 + slope * x, 1 + 1.3 * slope)).isCloseTo(0, within(1e-18));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.05, 1.5, 1.9})
    void a_curve_is_off_its_chord_by_no_more_and_to_the_same_side(double x) {
        DoubleUnaryOperator charging = t -> 1 - Math.exp(-t / 2);
        double level = charging.applyAsDouble(x);
        double first = charging.applyAsDouble(1);
        double chord = 1 + (level - first) / (charging.applyAsDouble(2) - first);
        double truth = (x - chord) * STEP;
        assertThat(truth).isNegative();
        assertThat(bend(charging, level)).isLessThanOrEqualTo(truth);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5, 0.8})
    void a_switch_lies_in_the_middle_of_its_step_on_the_average(double share) {
        // between two flat states the chord puts it at the share of the level, all places in the step are as likely
        DoubleUnaryOperator up = x -> x < 1.5 ? 0 : 5;
        assertThat(bend(up, 5 * share)).isCloseTo((0.5 - share) * STEP, within(1e-18));
        assertThat(bend(x -> 5 - up.applyAsDouble(x), 5 - 5 * share)).isCloseTo((0.5 - share) * STEP, within(1e-18));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.4})
    void a_corner_is_off_by_as_much_as_the_ramp_carried_on(double share) {
        // flat up to 1.5 steps, then one unit a step: passed at 1.5 + level, the chord to 0.5 at 2 says 1 + 2 level
        double level = 0.5 * share;
        assertThat(bend(x -> Math.max(0, x - 1.5), level))
                .isCloseTo((1.5 + level - 1 - 2 * level) * STEP, within(1e-18));
    }

    @Test
    void nothing_is_said_without_a_sample_before() {
        InputBend bend = new InputBend();
        bend.add(0, 0);
        bend.add(STEP, 1);
        bend.add(2 * STEP, 1);
        assertThat(bend.seconds(0.7)).isZero();
    }
}
