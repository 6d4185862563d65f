// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Overview;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Segment;
import org.dutywright.workbench.capture.view.Drawing;
import org.dutywright.workbench.capture.view.Run;
import org.dutywright.workbench.capture.view.TimeScale;
import org.dutywright.workbench.capture.view.TimeWindow;
import org.dutywright.workbench.capture.view.Traces;
import org.junit.jupiter.api.Test;

final class TracesTest {
    private static final int WIDTH = 200;

    @Test
    void a_glitch_of_one_sample_is_drawn_at_its_full_height() throws IOException {
        double[] values = new double[1_000_000];
        values[123_456] = 5;
        Traces traces = traces(Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 1e6, values));

        Run run = draw(traces, 0, 1).channels().get(0).get(0);

        assertThat(Arrays.stream(run.values()).max()).hasValue(5);
        int at = indexOfMax(run.values());
        // the middle of its column: half a column from it at most
        assertThat(run.seconds()[at]).isCloseTo(0.123456, within(0.5 / WIDTH));
    }

    @Test
    void there_are_two_points_for_each_column_of_pixels() throws IOException {
        Traces traces = traces(Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 1e6, new double[500_000]));

        Drawing drawing = draw(traces, 0, 0.5);

        assertThat(drawing.samplesAreSingle()).isFalse();
        assertThat(drawing.channels().get(0)).hasSize(1);
        assertThat(drawing.channels().get(0).get(0).count()).isEqualTo(2 * WIDTH);
    }

    @Test
    void few_samples_are_drawn_themselves_with_a_neighbour_on_either_side() throws IOException {
        double[] values = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
        Traces traces = traces(Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 1000, values));

        Drawing drawing = draw(traces, 0.0025, 0.0055);

        assertThat(drawing.samplesAreSingle()).isTrue();
        assertThat(drawing.channels().get(0).get(0).values()).containsExactly(3, 4, 5, 6, 7);
    }

    @Test
    void columns_agree_with_a_search_through_all_samples() throws IOException {
        Random random = new Random(3);
        double[] values = random.doubles(60_000).toArray();
        Traces traces = traces(Captures.ofArrays(List.of("signal1"), List.of("V"), -2, 10_000, values));
        TimeScale scale = new TimeScale(new TimeWindow(-1.37, 3.21), WIDTH);

        Run run =
                traces.draw(scale, () -> false).orElseThrow().channels().get(0).get(0);

        for (int column = 0; column < WIDTH; column++) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < values.length; i++) {
                double seconds = -2 + i / 10_000.0;
                if (seconds >= scale.secondsAt(column) && seconds < scale.secondsAt(column + 1)) {
                    low = Math.min(low, values[i]);
                    high = Math.max(high, values[i]);
                }
            }
            double first = run.values()[2 * column];
            double second = run.values()[2 * column + 1];
            assertThat(Math.min(first, second)).isEqualTo(low);
            assertThat(Math.max(first, second)).isEqualTo(high);
        }
    }

    @Test
    void strokes_close_together_are_no_place_for_a_thick_line() throws IOException {
        double[] values = new double[100_000];
        for (int i = 0; i < values.length; i++) {
            values[i] = i % 100 < 50 ? 5 : 0;
        }
        Traces traces = traces(Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 100_000, values));

        // 1000 periods in 200 columns, then 5 in them
        assertThat(draw(traces, 0, 1).channels().get(0).get(0).isSparse(WIDTH)).isFalse();
        assertThat(draw(traces, 0, 0.005).channels().get(0).get(0).isSparse(WIDTH))
                .isTrue();
    }

    @Test
    void a_gap_of_the_recording_interrupts_the_line() throws IOException {
        List<Segment> segments = List.of(new Segment(0, 10_000, 0), new Segment(10_000, 10_000, 3));
        Capture capture = Captures.ofArrays(List.of("signal1"), List.of("V"), 10_000, segments, new double[20_000]);
        Traces traces = traces(capture);

        List<Run> columns = draw(traces, 0, 4).channels().get(0);
        List<Run> samples = draw(traces, 0.995, 3.005).channels().get(0);

        for (List<Run> runs : List.of(columns, samples)) {
            assertThat(runs).hasSize(2);
            assertThat(Arrays.stream(runs.get(0).seconds()).max().orElseThrow()).isLessThan(1.02);
            assertThat(Arrays.stream(runs.get(1).seconds()).min().orElseThrow()).isGreaterThan(2.98);
        }
    }

    @Test
    void unevenly_stamped_samples_stand_at_their_instants() throws IOException {
        double[] seconds = new double[10_000];
        double[] values = new double[10_000];
        for (int i = 0; i < seconds.length; i++) {
            double share = i / 10_000.0;
            seconds[i] = share * share;
            values[i] = share * share;
        }
        Traces traces = traces(Captures.ofStampedArrays(List.of("ramp"), List.of("V"), seconds, values));

        Run run = draw(traces, 0, 1).channels().get(0).get(0);

        // the value is the instant, and a column is 1/200 wide
        for (int i = 0; i < run.count(); i++) {
            assertThat(run.values()[i]).isCloseTo(run.seconds()[i], within(0.5 / WIDTH));
        }
    }

    @Test
    void a_reading_is_the_nearest_sample() throws IOException {
        Traces traces = traces(Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 1000, new double[] {1, 2, 3, 4}));

        assertThat(traces.reading(0, 0.0014).orElseThrow().value()).isEqualTo(2);
        assertThat(traces.reading(0, 0.0016).orElseThrow().seconds()).isEqualTo(0.002);
    }

    @Test
    void there_is_no_reading_in_a_gap_nor_beyond_the_ends() throws IOException {
        List<Segment> segments = List.of(new Segment(0, 100, 0), new Segment(100, 100, 3));
        Traces traces = traces(Captures.ofArrays(List.of("signal1"), List.of("V"), 1000, segments, new double[200]));

        assertThat(traces.reading(0, 1.5)).isEmpty();
        assertThat(traces.reading(0, 2.5)).isEmpty();
        assertThat(traces.reading(0, -1)).isEmpty();
        assertThat(traces.reading(0, 9)).isEmpty();
        assertThat(traces.reading(0, 3.05)).isPresent();
    }

    @Test
    void a_drawing_that_nobody_wants_any_more_is_given_up() throws IOException {
        Traces traces = traces(Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 1000, new double[10]));

        assertThat(traces.draw(new TimeScale(new TimeWindow(0, 1), WIDTH), () -> true))
                .isEmpty();
    }

    @Test
    void a_capture_of_one_sample_can_be_shown() throws IOException {
        Traces traces = traces(Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 1000, new double[] {3}));

        assertThat(traces.wholeView().shown().spanSeconds()).isPositive();
        assertThat(traces.lanes().get(0).low()).isLessThan(3);
    }

    private static Drawing draw(Traces traces, double start, double end) throws IOException {
        return traces.draw(new TimeScale(new TimeWindow(start, end), WIDTH), () -> false)
                .orElseThrow();
    }

    private static Traces traces(Capture capture) throws IOException {
        List<Overview> overviews = new ArrayList<>();
        for (int i = 0; i < capture.channels().size(); i++) {
            overviews.add(Overview.of(capture, i, Progress.NONE));
        }
        return Traces.of(capture, overviews);
    }

    private static int indexOfMax(double[] values) {
        int best = 0;
        for (int i = 1; i < values.length; i++) {
            best = values[i] > values[best] ? i : best;
        }
        return best;
    }
}
