// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.workbench.capture.view.Flag;
import org.dutywright.workbench.capture.view.TimeScale;
import org.dutywright.workbench.capture.view.TimeWindow;
import org.junit.jupiter.api.Test;

/** Letters of the faked geometry are six pixels wide. */
final class FlagTest {
    private final TimeScale scale = new TimeScale(new TimeWindow(0, 10), 1000);

    @Test
    void a_flag_stands_where_its_event_begins_and_carries_its_word() {
        List<Flag> flags = flags(List.of(event(EventKind.DROPOUT, 3)));

        assertThat(flags).hasSize(1);
        assertThat(flags.getFirst().x()).isEqualTo(300);
        assertThat(flags.getFirst().text()).isEqualTo("dropout");
    }

    @Test
    void events_outside_the_window_have_no_flags() {
        assertThat(flags(List.of(event(EventKind.RUNT, -0.1), event(EventKind.RUNT, 10.1))))
                .isEmpty();
    }

    @Test
    void flags_that_would_cover_each_other_are_one_that_counts_them() {
        List<Flag> flags = flags(List.of(event(EventKind.RUNT, 3), event(EventKind.DROPOUT, 3.1)));

        assertThat(flags).hasSize(1);
        // dropouts name the place, runts come along
        assertThat(flags.getFirst().text()).isEqualTo("dropout +1");
        assertThat(flags.getFirst().event().kind()).isEqualTo(EventKind.DROPOUT);
    }

    @Test
    void no_event_is_lost_and_no_flag_covers_another() {
        Random random = new Random(7);
        List<PulseEvent> events = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            events.add(event(EventKind.values()[random.nextInt(EventKind.values().length)], 10 * random.nextDouble()));
        }

        List<Flag> flags = flags(events);

        assertThat(flags.stream().mapToInt(Flag::count).sum()).isEqualTo(200);
        for (int i = 1; i < flags.size(); i++) {
            assertThat(flags.get(i).x())
                    .isGreaterThanOrEqualTo(
                            flags.get(i - 1).x() + flags.get(i - 1).width());
        }
    }

    @Test
    void the_flag_of_an_event_at_the_end_is_readable() {
        Flag last = flags(List.of(event(EventKind.MISSING_PULSE, 9.99))).getFirst();

        assertThat(last.x() + last.width()).isLessThanOrEqualTo(1000);
    }

    @Test
    void a_flag_is_found_by_its_place() {
        List<Flag> flags = flags(List.of(event(EventKind.DROPOUT, 3), event(EventKind.RUNT, 6)));

        assertThat(Flag.at(flags, 310).orElseThrow().event().kind()).isEqualTo(EventKind.DROPOUT);
        assertThat(Flag.at(flags, 605).orElseThrow().event().kind()).isEqualTo(EventKind.RUNT);
        assertThat(Flag.at(flags, 500)).isEmpty();
    }

    private List<Flag> flags(List<PulseEvent> events) {
        return Flag.of(events, scale, text -> 6 * text.length());
    }

    private static PulseEvent event(EventKind kind, double startSeconds) {
        return new PulseEvent(kind, startSeconds, startSeconds + 0.01, OptionalLong.empty(), "detail");
    }
}
