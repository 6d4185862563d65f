// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.dutywright.workbench.capture.view.TimeScale;
import org.dutywright.workbench.capture.view.TimeView;
import org.dutywright.workbench.capture.view.TimeWindow;
import org.junit.jupiter.api.Test;

/** All expected numbers follow from the geometry by hand; the tolerance is a millionth of a pixel's length. */
final class TimeViewTest {
    private static final double TOLERANCE = 1e-9;

    private final TimeView whole = TimeView.of(new TimeWindow(-1, 9), 1e-5);

    @Test
    void at_first_the_whole_capture_is_shown() {
        assertThat(whole.shown()).isEqualTo(new TimeWindow(-1, 9));
    }

    @Test
    void zooming_keeps_the_instant_under_the_pointer_where_it_is() {
        TimeScale before = new TimeScale(whole.shown(), 1000);
        double pointed = before.secondsAt(700);

        TimeView zoomed = whole.zoomed(pointed, 4);

        assertThat(zoomed.shown().spanSeconds()).isCloseTo(2.5, within(TOLERANCE));
        assertThat(new TimeScale(zoomed.shown(), 1000).secondsAt(700)).isCloseTo(pointed, within(TOLERANCE));
    }

    @Test
    void zooming_out_ends_at_the_whole_capture() {
        assertThat(whole.zoomed(0, 8).zoomed(3, 1.0 / 100).shown()).isEqualTo(whole.whole());
    }

    @Test
    void zooming_in_ends_at_eight_samples() {
        assertThat(whole.zoomed(2, 1e12).shown().spanSeconds()).isCloseTo(8e-5, within(TOLERANCE));
    }

    @Test
    void instants_long_after_zero_are_not_magnified_beyond_what_a_double_can_tell_apart() {
        // seconds since 1970, as some files count them
        TimeView late = TimeView.of(new TimeWindow(1.7e9, 1.7e9 + 10), 1e-7);

        TimeWindow shown = late.zoomed(1.7e9 + 5, 1e12).shown();

        assertThat(shown.spanSeconds() / Math.ulp(1.7e9)).isGreaterThan(1000);
    }

    @Test
    void the_window_never_leaves_the_capture_whatever_is_done() {
        Random random = new Random(20);
        TimeView view = whole;
        for (int i = 0; i < 10_000; i++) {
            view = switch (random.nextInt(5)) {
                case 0 -> view.zoomed(-3 + 14 * random.nextDouble(), Math.pow(2, random.nextGaussian()));
                case 1 -> view.panned(random.nextGaussian());
                case 2 -> view.movedTo(-3 + 14 * random.nextDouble());
                case 3 -> view.revealing(8 * random.nextDouble(), 9);
                default -> view.closeTo(3, 3 + random.nextDouble());
            };

            assertThat(view.shown().startSeconds()).isGreaterThanOrEqualTo(-1);
            assertThat(view.shown().endSeconds()).isLessThanOrEqualTo(9);
        }
    }

    @Test
    void panning_moves_by_shares_of_the_window_and_stops_at_the_end() {
        TimeView view = whole.zoomed(0, 10);

        assertThat(view.panned(0.5).shown().startSeconds())
                .isCloseTo(view.shown().startSeconds() + 0.5, within(TOLERANCE));
        assertThat(view.panned(100).shown().endSeconds()).isEqualTo(9);
    }

    @Test
    void what_is_seen_already_does_not_move_the_window() {
        TimeView view = whole.zoomed(0, 10);

        assertThat(view.revealing(0, 0.005)).isEqualTo(view);
    }

    @Test
    void what_is_out_of_sight_comes_to_the_middle_at_the_same_magnification() {
        TimeView view = whole.zoomed(0, 10).revealing(5, 5.2);

        assertThat(view.shown().spanSeconds()).isCloseTo(1, within(TOLERANCE));
        assertThat(view.shown().middleSeconds()).isCloseTo(5.1, within(TOLERANCE));
    }

    @Test
    void a_place_is_shown_with_ten_times_its_length() {
        TimeView view = whole.closeTo(5, 5.2);

        assertThat(view.shown().spanSeconds()).isCloseTo(2, within(TOLERANCE));
        assertThat(view.shown().middleSeconds()).isCloseTo(5.1, within(TOLERANCE));
    }

    @Test
    void a_place_without_length_is_shown_with_some_samples_around_it() {
        TimeWindow shown = whole.closeTo(5, 5).shown();

        assertThat(shown.spanSeconds()).isCloseTo(32e-5, within(TOLERANCE));
        assertThat(shown.middleSeconds()).isCloseTo(5, within(TOLERANCE));
    }

    @Test
    void a_window_without_length_is_refused() {
        assertThatThrownBy(() -> new TimeWindow(1, 1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void pixels_far_outside_do_not_overflow() {
        TimeScale scale = new TimeScale(new TimeWindow(0, 1e-6), 1000);

        assertThat(scale.pixelAt(1e6)).isEqualTo(2000);
        assertThat(scale.pixelAt(-1e6)).isEqualTo(-1000);
    }
}
