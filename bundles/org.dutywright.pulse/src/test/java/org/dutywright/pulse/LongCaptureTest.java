// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Long recordings of a healthy sensor: no false event, no growth, and they can be stopped. */
class LongCaptureTest {
    /** Every 4 s a stroke of 80 ms full travel, 10 to 45 %, and back. */
    private static double strokes(double t) {
        double phase = t / 4 % 1;
        double travel = phase < 0.5 ? (phase - 0.2) / 0.02 : (0.9 - phase) / 0.02;
        return 0.1 + 0.35 * Math.clamp(travel, 0, 1);
    }

    private static Capture capture(double rate, double seconds, double ramp, double noise, long seed) {
        return new StreamedSignal(
                        rate, Math.round(rate * seconds), 200, ramp, noise, 16.0 / 256, seed, LongCaptureTest::strokes)
                .capture();
    }

    private static CaptureMeasurement measure(Capture capture, Progress progress) throws IOException {
        return CaptureMeasurer.withInstalled().measure(capture, Map.of(), PulseSettings.defaults(), 50, progress);
    }

    @Test
    void a_million_cycles_with_strokes_eight_bits_and_noise_have_no_event() throws IOException {
        try (CaptureMeasurement measured = measure(capture(10e3, 5000, 0, 0.05, 7), Progress.NONE)) {
            ChannelMeasurement channel = measured.channels().get(0);
            assertThat(channel.cycleCount()).isEqualTo(999_999);
            assertThat(channel.disturbedCount()).isZero();
            assertThat(channel.eventCounts()).isEmpty();
            Statistic frequency = Measured.statistic(channel, "frequency");
            assertThat(Math.abs(frequency.mean() - 200)).isLessThan(3 * frequency.u());
            // the table gives any cycle, in any order
            assertThat(channel.cycles().get(999_998).endSeconds()).isBetween(4999.99, 5000.0);
            assertThat(channel.cycles().get(3).index()).isEqualTo(3);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "20e3, 150e-6, 0.05, 300",
        "100e3, 100e-6, 0.05, 60",
        "100e3, 400e-6, 0.02, 60",
        "1e6, 100e-6, 0.03, 5",
        "10e6, 450e-6, 0.05, 0.5"
    })
    void sloping_edges_and_noise_have_no_event(double rate, double ramp, double noise, double seconds)
            throws IOException {
        try (CaptureMeasurement measured = measure(capture(rate, seconds, ramp, noise, 11), Progress.NONE)) {
            ChannelMeasurement channel = measured.channels().get(0);
            assertThat(channel.cycleCount()).isEqualTo(Math.round(seconds * 200) - 1);
            assertThat(channel.eventCounts()).isEmpty();
        }
    }

    /** After an edge of 20 us, one in 2,000 has two samples of 20 kS/s in a row that noise takes below 90 %. */
    @Test
    void noise_after_a_fast_edge_does_not_make_it_slow() throws IOException {
        ChannelPlan plan =
                new ChannelPlan(Optional.of(Role.PWM), Optional.empty(), Optional.empty(), OptionalDouble.of(60e-6));
        try (CaptureMeasurement measured = Measured.of(capture(20e3, 60, 20e-6, 0.05, 3), plan)) {
            assertThat(measured.channels().get(0).eventCounts()).isEmpty();
        }
    }

    /** Counts the work and cancels after so much of it. */
    private static final class Counting implements Progress {
        private final long cancelAfter;
        long begun;
        long total;
        long worked;

        Counting(long cancelAfter) {
            this.cancelAfter = cancelAfter;
        }

        @Override
        public void begin(String task, long totalWork) {
            begun++;
            total = totalWork;
        }

        @Override
        public void worked(long work) {
            assertThat(work).isPositive();
            worked += work;
        }

        @Override
        public boolean isCancelled() {
            return worked >= cancelAfter;
        }
    }

    @Test
    void progress_is_one_task_and_adds_up_to_what_was_announced() throws IOException {
        Counting progress = new Counting(Long.MAX_VALUE);
        measure(capture(20e3, 20, 0, 0.01, 1), progress).close();
        assertThat(progress.begun).isEqualTo(1);
        assertThat(progress.worked).isEqualTo(progress.total);
    }

    @Test
    void a_cancelled_measurement_stops_within_a_block() {
        for (long after : new long[] {0, 100_000, 700_000, 1_300_000}) {
            Counting progress = new Counting(after);
            Capture capture = capture(20e3, 20, 0, 0.01, 1);
            assertThatThrownBy(() -> measure(capture, progress)).isInstanceOf(CancelledException.class);
            assertThat(progress.worked).isLessThanOrEqualTo(after + 65_536);
        }
    }
}
