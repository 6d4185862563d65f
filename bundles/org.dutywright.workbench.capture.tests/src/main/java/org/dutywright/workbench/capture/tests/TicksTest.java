// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.dutywright.workbench.capture.view.Ticks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class TicksTest {
    @ParameterizedTest
    @CsvSource({"5, 5, 1", "5, 4, 2", "6, 6, 1", "7, 3, 5", "0.012, 6, 0.002", "9, 1, 10", "3e6, 6, 5e5"})
    void steps_are_one_two_or_five_times_a_power_of_ten(double span, int most, double step) {
        // a few last digits, because powers of ten are rounded
        assertThat(Ticks.within(span, most, "V").step()).isCloseTo(step, within(step * 1e-12));
    }

    @Test
    void ticks_are_the_multiples_of_the_step_within_the_bounds() {
        assertThat(new Ticks(2, "V").between(-0.5, 5.5).toArray()).containsExactly(0, 2, 4);
        assertThat(new Ticks(1, "V").between(0.2, 0.8).toArray()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "0, 1, V, 0 V",
        "5, 1, V, 5 V",
        "10, 5, V, 10 V",
        "0.5, 0.5, V, 500 mV",
        "2.135, 0.001, s, 2.135 s",
        "0.0005, 0.00001, s, 500 µs",
        "2.13501, 0.00001, s, 2.13501 s",
        "1.0000000000000002, 0.5, s, 1.0 s",
        "1e-17, 0.1, s, 0 s",
        "-0.2, 0.2, V, -200 mV",
        "3, 1, '', 3"
    })
    void labels_carry_unit_and_prefix_and_the_digits_that_tell_neighbours_apart(
            double value, double step, String unit, String label) {
        assertThat(new Ticks(step, unit).label(value)).isEqualTo(label);
    }
}
