// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Segment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers that follow from the formula of the waveform. */
class ClosedFormTest {
    @Test
    void linear_ramps_give_exact_instants_and_eighty_percent_of_the_ramp() {
        // 100 us from 0 to 100 % has 80 us from 10 to 90 % (closed form); 1 MHz puts 100 samples on a ramp
        TestSignal signal =
                TestSignal.at(1e6, 0.5).ramp(100e-6).levels(0.1, 4.9).carrier(199.97, 1.23457e-3, 0.45);
        ChannelMeasurement channel = Measured.pwm(signal);

        assertThat(channel.status()).isEqualTo(Status.OK);
        assertThat(channel.eventCounts()).isEmpty();
        assertThat(channel.cycleCount()).isEqualTo(99);
        // interpolation on straight edges is exact but for rounding
        assertThat(Measured.statistic(channel, "frequency").mean()).isCloseTo(199.97, within(1e-8));
        assertThat(Measured.statistic(channel, "period").mean()).isCloseTo(1 / 199.97, within(1e-12));
        assertThat(Measured.statistic(channel, "duty").mean()).isCloseTo(45, within(1e-8));
        assertThat(Measured.statistic(channel, "pulse-duration").mean()).isCloseTo(0.45 / 199.97, within(1e-12));
        assertThat(Measured.single(channel, "transition.rise").value()).isCloseTo(80e-6, within(1e-12));
        assertThat(Measured.single(channel, "transition.fall").value()).isCloseTo(80e-6, within(1e-12));
        assertThat(Measured.cycles(channel).get(0).startSeconds()).isCloseTo(1.23457e-3, within(1e-11));
        assertThat(channel.levels().orElseThrow().low().value()).isCloseTo(0.1, within(1e-12));
        assertThat(channel.levels().orElseThrow().high().value()).isCloseTo(4.9, within(1e-12));
    }

    // The carrier is locked to the sample clock, so every edge is sampled at the same places: nothing averages out.
    @ParameterizedTest
    @CsvSource({"20e-6, 0", "20e-6, 3e-6", "20e-6, 7e-6", "35e-6, 2e-6", "60e-6, 4e-6", "90e-6, 5e-6"})
    void a_transition_of_few_samples_lies_within_what_is_said_of_it(double ramp, double phase) {
        TestSignal signal = TestSignal.at(100e3, 1).ramp(ramp).levels(0.4, 12.3).carrier(200, 1e-3 + phase, 0.3);
        Uncertain rise = Measured.single(Measured.pwm(signal), "transition.rise");
        assertThat(rise.value()).isCloseTo(0.8 * ramp, within(2 * rise.u()));
    }

    @ParameterizedTest
    @CsvSource({"0.10, 0.580", "0.45, 2.260", "0.90, 4.420"})
    void an_averaging_meter_settles_on_low_plus_duty_times_swing(double duty, double volts) {
        // V_L + D (V_H - V_L) with V_L 0.1 V, V_H 4.9 V (closed form)
        TestSignal signal = TestSignal.at(1e6, 0.2).ramp(20e-6).levels(0.1, 4.9).carrier(200.3, 1e-3, duty);
        ChannelMeasurement channel = Measured.pwm(signal);
        // the corners of the ramps fall between samples: up to dt^2 * slope / 8 a corner, 6e-6 V a cycle
        assertThat(Measured.single(channel, "mean-voltage").value()).isCloseTo(volts, within(1e-5));
        for (Cycle cycle : Measured.cycles(channel)) {
            assertThat(cycle.mean()).isCloseTo(volts, within(3e-5));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {180, 190, 200, 210, 220})
    void the_carriers_of_the_trade_are_measured(double hertz) {
        // common practice, no source: carriers from 180 to 220 Hz, about 10 % released and 45 % pressed
        TestSignal signal = TestSignal.at(100e3, 1)
                .ramp(20e-6)
                .noise(0.05, 9)
                .carrier(hertz, 1e-3, t -> 0.1 + 0.35 * Math.clamp((t - 0.3) / 0.4, 0, 1));
        ChannelMeasurement channel = Measured.pwm(signal);
        Statistic frequency = Measured.statistic(channel, "frequency");
        assertThat(channel.eventCounts()).isEmpty();
        assertThat(Math.abs(frequency.mean() - hertz)).isLessThan(3 * frequency.u());
        Statistic duty = Measured.statistic(channel, "duty");
        assertThat(duty.min()).isCloseTo(10, within(0.5));
        assertThat(duty.max()).isCloseTo(45, within(0.5));
    }

    @Test
    void the_duty_counts_the_active_level() {
        TestSignal signal = TestSignal.at(100e3, 0.5).ramp(20e-6).carrier(200, 1e-3, 0.3);
        Capture capture = Measured.capture(signal);
        ChannelMeasurement high =
                Measured.of(capture, Measured.plan(ActiveLevel.HIGH)).channels().get(0);
        ChannelMeasurement low =
                Measured.of(capture, Measured.plan(ActiveLevel.LOW)).channels().get(0);
        assertThat(Measured.statistic(high, "duty").mean()).isCloseTo(30, within(1e-6));
        assertThat(Measured.statistic(low, "duty").mean()).isCloseTo(70, within(1e-6));
        // a cycle starts at the edge into the active level
        assertThat(Measured.cycles(high).get(0).startSeconds()).isCloseTo(1e-3, within(1e-9));
        assertThat(Measured.cycles(low).get(0).startSeconds()).isCloseTo(2.5e-3, within(1e-9));
        assertThat(Measured.single(high, "mean-voltage").value())
                .isCloseTo(Measured.single(low, "mean-voltage").value(), within(1e-9));
    }

    @Test
    void the_first_and_the_last_partial_cycle_do_not_count() {
        // edges at 3, 8, ... 98 ms: 20 edges bound 19 cycles, though 100 ms hold 20 periods
        ChannelMeasurement channel =
                Measured.pwm(TestSignal.at(100e3, 0.1).ramp(20e-6).carrier(200, 3e-3 - 5e-3, 0.5));
        assertThat(channel.cycleCount()).isEqualTo(19);
        assertThat(Measured.cycles(channel).get(0).startSeconds()).isCloseTo(3e-3, within(1e-9));
    }

    @Test
    void instants_are_those_of_the_time_column_and_keep_their_digits_far_from_zero() {
        TestSignal signal = TestSignal.at(1e6, 0.2).ramp(40e-6).carrier(200, 1e-3, 0.3);
        signal.startingAt(-0.05);
        assertThat(Measured.cycles(Measured.pwm(signal)).get(0).startSeconds()).isCloseTo(-0.049, within(1e-12));
        // seconds of the epoch have a resolution of 2e-7 s in a double; periods must not
        signal.startingAt(1.79e9);
        assertThat(Measured.statistic(Measured.pwm(signal), "period").sd()).isLessThan(1e-14);
    }

    @Test
    void no_cycle_and_no_event_spans_a_gap() {
        double[] all =
                TestSignal.at(100e3, 1).ramp(20e-6).carrier(200, 1e-3, 0.3).samples();
        // half a second is cut out of the middle: 0.25 to 0.75 s
        double[] kept = new double[50_000];
        System.arraycopy(all, 0, kept, 0, 25_000);
        System.arraycopy(all, 75_000, kept, 25_000, 25_000);
        List<Segment> segments = List.of(new Segment(0, 25_000, 0), new Segment(25_000, 25_000, 0.75));
        Capture capture = Captures.ofArrays(List.of("a"), List.of("V"), 100e3, segments, kept);
        CaptureMeasurement measured = Measured.of(capture);
        ChannelMeasurement channel = measured.channels().get(0);
        assertThat(channel.eventCounts()).isEmpty();
        assertThat(channel.cycleCount()).isEqualTo(49 + 49);
        assertThat(Measured.cycles(channel)).allMatch(it -> it.endSeconds() < 0.25 || it.startSeconds() > 0.75);
        assertThat(Measured.statistic(channel, "frequency").mean()).isCloseTo(200, within(1e-6));
        assertThat(measured.fitness())
                .anyMatch(it -> it.item().equals("capture.gaps") && it.reason().contains("1 gap"));
    }

    @ParameterizedTest
    @CsvSource({"0.03, 100e3", "0.97, 100e3", "0.03, 20e3", "0.97, 20e3", "0.005, 100e3", "0.995, 100e3"})
    void very_short_and_very_long_pulses_give_both_levels(double duty, double rate) {
        TestSignal signal =
                TestSignal.at(rate, 2).levels(0.4, 12).noise(0.02, 5).carrier(200.17, 1e-3, duty);
        ChannelMeasurement channel = Measured.pwm(signal);
        assertThat(channel.status()).isEqualTo(Status.OK);
        assertThat(channel.eventCounts()).isEmpty();
        // some hundred samples of 0.02 V noise even in the rarer state: 1 mV, here five times that
        assertThat(channel.levels().orElseThrow().low().value()).isCloseTo(0.4, within(5e-3));
        assertThat(channel.levels().orElseThrow().high().value()).isCloseTo(12, within(5e-3));
        Statistic statistic = Measured.statistic(channel, "duty");
        assertThat(Math.abs(statistic.mean() - 100 * duty)).isLessThan(3 * statistic.u());
    }

    @Test
    void eight_bits_and_five_percent_noise_make_no_double_edges() {
        // a fast stroke of 80 ms full travel in the middle; 8 bits over 16 V
        TestSignal signal = TestSignal.at(100e3, 5)
                .levels(0.5, 11.5)
                .ramp(150e-6)
                .noise(0.05 * 11, 77)
                .quantised(16.0 / 256)
                .carrier(200, 1.3e-3, t -> 0.1 + 0.35 * Math.clamp((t - 2) / 0.08, 0, 1));
        ChannelMeasurement channel = Measured.pwm(signal);
        assertThat(channel.cycleCount()).isEqualTo(999);
        assertThat(channel.eventCounts()).isEmpty();
        Statistic frequency = Measured.statistic(channel, "frequency");
        assertThat(Math.abs(frequency.mean() - 200)).isLessThan(3 * frequency.u());
    }

    @Test
    void white_edge_noise_shows_the_known_jitter() {
        // s on each edge: period sqrt(2) s, cycle to cycle sqrt(6) s, lag-1 autocorrelation -0.5 (closed form)
        double s = 10e-6;
        int cycles = 20_000;
        Random random = new Random(11);
        TestSignal signal = TestSignal.at(50e3, cycles / 200.0).ramp(200e-6);
        for (int k = 0; k < cycles; k++) {
            double t = 1e-3 + k * 5e-3 + s * random.nextGaussian();
            signal.pieces().add(new TestSignal.Piece(t, 1e-3 + k * 5e-3 + 2e-3, 1));
        }
        ChannelMeasurement channel = Measured.pwm(signal);
        assertThat(channel.cycleCount()).isEqualTo(cycles - 1);
        // relative scatter of a standard deviation of n correlated values: sqrt(sum of squared autocorrelations / 2n),
        // here 0.61 % and 0.70 %; three times that, and three times 1 / sqrt(n) for the correlation
        assertThat(Measured.single(channel, "period-jitter.rms").value()).isCloseTo(Math.sqrt(2) * s, within(2.6e-7));
        assertThat(Measured.single(channel, "cycle-jitter.rms").value()).isCloseTo(Math.sqrt(6) * s, within(5.1e-7));
        assertThat(Measured.single(channel, "period-jitter.lag-1").value()).isCloseTo(-0.5, within(0.02));
    }

    @Test
    void without_samples_on_the_edge_its_instant_is_uncertain_by_a_step_over_root_twelve() {
        // locked to the samples, all edges of a direction are off by the same part of dt = 10 us: u_e = dt / sqrt(12) =
        // 2.886751 us, and the duty by two of them over T = 5 ms: 0.081650 % (closed form)
        ChannelMeasurement channel = Measured.pwm(TestSignal.at(100e3, 1).carrier(200, 1.003e-3, 0.1));
        Statistic duty = Measured.statistic(channel, "duty");
        assertThat(duty.u()).isCloseTo(0.081650, within(1e-5));
        // two rectangles of half-width dt / 2 make a triangle over -dt to dt: 95 % of it lie within dt (1 - sqrt(0.05))
        assertThat(duty.u95()).isCloseTo(100 * 10e-6 * (1 - Math.sqrt(0.05)) / 5e-3, within(1e-5));
        // each of two periods is known to lie within a step: two steps, rectangular
        assertThat(Measured.single(channel, "period-jitter.peak-to-peak").u())
                .isCloseTo(20e-6 / Math.sqrt(3), within(1e-11));
        // the mean of 198 periods: the outermost edges, and a clock of 50 ppm half-width
        Statistic period = Measured.statistic(channel, "period");
        assertThat(period.u())
                .isCloseTo(Math.hypot(4.082483e-6 / channel.cycleCount(), 5e-3 * 50e-6 / Math.sqrt(3)), within(1e-11));
    }

    @Test
    void edges_that_wander_over_all_places_between_the_samples_average_out() {
        // T = 499.925 samples: 15 times through all places in 199 cycles
        ChannelMeasurement channel = Measured.pwm(TestSignal.at(100e3, 1).carrier(200.03, 1e-3, 0.1));
        Statistic duty = Measured.statistic(channel, "duty");
        // a random walk over the places would leave 0.081650 % / sqrt(199) = 0.0058 %; a tenth of the locked value is
        // the limit
        assertThat(duty.u()).isLessThan(0.0082);
        assertThat(Math.abs(duty.mean() - 10)).isLessThan(2 * duty.u());
        assertThat(Math.abs(Measured.statistic(channel, "period").mean() - 1 / 200.03))
                .isLessThan(2 * Measured.statistic(channel, "period").u());
    }
}
