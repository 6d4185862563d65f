// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.dutywright.diagnosis.Position;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is typed into the dialog, as numbers. */
final class CheckWishTest {
    @Test
    void the_supply_may_be_left_open_and_may_have_either_decimal_mark() {
        assertThat(CheckWish.supply("  ")).isEmpty();
        assertThat(CheckWish.supply(" 13.8 ")).hasValue(13.8);
        assertThat(CheckWish.supply("13,8")).hasValue(13.8);
    }

    @ParameterizedTest
    @ValueSource(strings = {"twelve", "0", "-5", "NaN", "Infinity", "12 V"})
    void what_is_no_voltage_is_refused(String text) {
        assertThatThrownBy(() -> CheckWish.supply(text)).isInstanceOf(NumberFormatException.class);
    }

    @Test
    void the_positions_stand_in_the_order_of_the_list() {
        assertThat(CheckWish.position(0)).isEmpty();
        assertThat(CheckWish.position(1)).contains(Position.RELEASED);
        assertThat(CheckWish.position(2)).contains(Position.PRESSED);
    }
}
