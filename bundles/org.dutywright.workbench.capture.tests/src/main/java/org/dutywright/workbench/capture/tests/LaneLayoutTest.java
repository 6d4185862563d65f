// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.dutywright.workbench.capture.view.Lane;
import org.dutywright.workbench.capture.view.LaneLayout;
import org.dutywright.workbench.capture.view.LaneLayout.AxisRange;
import org.junit.jupiter.api.Test;

final class LaneLayoutTest {
    private final LaneLayout three = new LaneLayout(600, 3, 20);
    private final Lane volts = Lane.of("signal1", "V", -0.5, 5.5);

    @Test
    void lanes_lie_below_each_other_and_fill_the_plot() {
        assertThat(three.top(0)).isZero();
        assertThat(three.bottom(0)).isEqualTo(three.top(1)).isEqualTo(200);
        assertThat(three.bottom(2)).isEqualTo(600);
    }

    @Test
    void every_height_belongs_to_the_lane_that_is_drawn_there() {
        for (int y = 0; y < 600; y++) {
            int lane = three.laneAt(y).orElseThrow();

            assertThat(y).isGreaterThanOrEqualTo(three.top(lane)).isLessThan(three.bottom(lane));
        }
        assertThat(three.laneAt(-1)).isEmpty();
        assertThat(three.laneAt(600)).isEmpty();
    }

    @Test
    void an_axis_over_the_whole_plot_puts_the_values_of_a_lane_into_it() {
        for (int lane = 0; lane < 3; lane++) {
            AxisRange range = three.axisRange(lane, volts);
            double perPixel = (range.upper() - range.lower()) / 600;

            // half a pixel, because pixels are whole
            assertThat((range.upper() - 5.5) / perPixel).isCloseTo(three.highPixel(lane), within(0.5));
            assertThat((range.upper() + 0.5) / perPixel).isCloseTo(three.lowPixel(lane), within(0.5));
            assertThat((range.upper() - 2) / perPixel).isCloseTo(three.pixelOf(lane, volts, 2), within(0.5));
        }
    }

    @Test
    void values_stay_between_the_flags_and_the_lower_edge() {
        for (int lane = 0; lane < 3; lane++) {
            assertThat(three.highPixel(lane)).isEqualTo(three.top(lane) + 20);
            assertThat(three.lowPixel(lane)).isLessThan(three.bottom(lane));
        }
    }

    @Test
    void a_plot_without_room_still_has_ranges() {
        AxisRange range = new LaneLayout(1, 4, 20).axisRange(3, volts);

        assertThat(range.lower()).isLessThan(range.upper()).isFinite();
    }

    @Test
    void a_channel_with_one_value_only_lies_in_the_middle_of_its_lane() {
        Lane constant = Lane.of("supply", "V", 5, 5);

        assertThat(three.pixelOf(0, constant, 5)).isEqualTo((three.highPixel(0) + three.lowPixel(0)) / 2);
        assertThat(Lane.of("ground", "V", 0, 0).low()).isNegative();
    }
}
