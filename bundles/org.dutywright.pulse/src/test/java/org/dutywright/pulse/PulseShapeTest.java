// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Separation, RMS, overshoot and what the module's input sees, against closed forms. */
class PulseShapeTest {
    private static final double PERIOD = 5e-3;

    private static ChannelPlan withInput(double rising, double falling, ActiveLevel active) {
        return new ChannelPlan(
                Optional.of(Role.PWM),
                Optional.of(active),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.of(new InputThresholds(rising, falling)));
    }

    /** A carrier of 200 Hz whose edges follow a step response, from 0 to {@code volts}. */
    private static Capture responding(
            double rateHz, double seconds, double period, double duty, double volts, DoubleUnaryOperator response) {
        double[] samples = new double[(int) Math.round(rateHz * seconds)];
        for (int i = 0; i < samples.length; i++) {
            double t = i / rateHz;
            // before the last two edges everything has settled: the sum of all older steps is a whole number
            double since = (t - 0.2 * period) - period * Math.floor((t - 0.2 * period) / period);
            double up = response.applyAsDouble(since);
            double down = since >= duty * period
                    ? response.applyAsDouble(since - duty * period)
                    : response.applyAsDouble(since + period - duty * period) - 1;
            samples[i] = volts * (up - down);
        }
        return Captures.ofArrays(List.of("signal1"), List.of("V"), 0, rateHz, samples);
    }

    @Test
    void the_separation_of_pulses_is_the_period_less_the_pulse_duration() {
        TestSignal signal = TestSignal.at(1e6, 0.3).ramp(40e-6).levels(0.1, 4.9).carrier(199.97, 1.23457e-3, 0.45);
        ChannelMeasurement channel = Measured.pwm(signal);
        Statistic separation = Measured.statistic(channel, "pulse-separation");
        // interpolation on straight edges is exact but for rounding
        assertThat(separation.mean()).isCloseTo(0.55 / 199.97, within(1e-12));
        assertThat(separation.u()).isPositive().isLessThan(1e-6);
    }

    @ParameterizedTest
    @CsvSource({"0.1, 40e-6", "0.45, 100e-6", "0.9, 200e-6", "0.5, 2e-6"})
    void the_rms_of_a_trapezoid_is_that_of_the_closed_form(double duty, double ramp) {
        // V sqrt(D - r / (3 T)): the corners lie on samples, so straight lines between samples are the signal itself
        TestSignal signal = TestSignal.at(1e6, 0.1).ramp(ramp).levels(0, 12).carrier(200, 1e-3, duty);
        Uncertain rms = Measured.single(Measured.pwm(signal), "rms-voltage");
        assertThat(rms.value()).isCloseTo(12 * Math.sqrt(duty - ramp / (3 * PERIOD)), within(1e-9));
    }

    @Test
    void the_rms_between_two_levels_weighs_their_squares() {
        // sqrt(D VH^2 + (1 - D) VL^2) for edges of one sample step, which cost less than a third of it a period
        TestSignal signal = TestSignal.at(1e6, 0.2).levels(-3, 9).noise(0.06, 4).carrier(200, 1.0005e-3, 0.3);
        Uncertain rms = Measured.single(Measured.pwm(signal), "rms-voltage");
        assertThat(rms.value()).isCloseTo(Math.sqrt(0.3 * 81 + 0.7 * 9), within(3 * rms.u()));
        assertThat(rms.u()).isLessThan(0.01);
    }

    @ParameterizedTest
    @CsvSource({"0.3, 37.2326", "0.4, 25.3827", "0.5, 16.3034", "0.6, 9.4780", "0.7071067811865476, 4.3217"})
    void the_overshoot_of_a_second_order_system_is_that_of_the_closed_form(double damping, double percent) {
        // 100 exp(-pi z / sqrt(1 - z^2)); a long period, so that the ringing left in the state's mean is below 0.01 %
        double omega = 100e3;
        double damped = omega * Math.sqrt(1 - damping * damping);
        double ratio = damping / Math.sqrt(1 - damping * damping);
        DoubleUnaryOperator response =
                t -> 1 - Math.exp(-damping * omega * t) * (Math.cos(damped * t) + ratio * Math.sin(damped * t));
        Capture capture = responding(2e6, 0.5, 0.05, 0.5, 5, response);
        ChannelMeasurement channel = Measured.of(capture).channels().get(0);
        for (String id : List.of("overshoot.rise", "overshoot.fall")) {
            Statistic overshoot = Measured.statistic(channel, id);
            // between samples of 1/40 of a radian the peak is missed by less than 0.03 % of itself
            assertThat(overshoot.mean()).as(id).isCloseTo(percent, within(0.03));
            assertThat(overshoot.max()).isCloseTo(percent, within(0.03));
            assertThat(Math.abs(overshoot.mean() - percent)).isLessThan(overshoot.u95() + 0.02);
        }
        for (String id : List.of("undershoot.rise", "undershoot.fall")) {
            assertThat(Measured.statistic(channel, id).mean()).as(id).isCloseTo(0, within(0.02));
        }
    }

    @Test
    void what_noise_alone_adds_to_an_overshoot_lies_within_its_interval() {
        TestSignal signal = TestSignal.at(200e3, 2).ramp(50e-6).noise(0.22, 3).carrier(200, 1e-3, 0.4);
        ChannelMeasurement channel = Measured.pwm(signal);
        for (String id : List.of("overshoot.rise", "overshoot.fall", "undershoot.rise", "undershoot.fall")) {
            Statistic overshoot = Measured.statistic(channel, id);
            assertThat(overshoot.mean()).as(id).isPositive().isLessThan(overshoot.u95());
        }
    }

    @Test
    void edges_without_ringing_do_not_overshoot() {
        TestSignal signal = TestSignal.at(1e6, 0.1).ramp(40e-6).carrier(200, 1e-3, 0.4);
        Statistic overshoot = Measured.statistic(Measured.pwm(signal), "overshoot.rise");
        assertThat(overshoot.max()).isCloseTo(0, within(1e-9));
    }

    @Test
    void levels_that_drift_are_no_overshoot() {
        // both levels rise by 10 % of the swing over the recording
        TestSignal signal = TestSignal.at(100e3, 2)
                .ramp(50e-6)
                .shifts(t -> 0.55 * t, t -> 0.55 * t)
                .noise(0.001, 5)
                .carrier(200, 1e-3, 0.4);
        Statistic overshoot = Measured.statistic(Measured.pwm(signal), "overshoot.rise");
        // a pulse's own drift is 0.03 % of the swing, and a level followed within some pulses 0.5 % off at most
        assertThat(overshoot.mean()).isLessThan(0.3);
        assertThat(overshoot.max()).isLessThan(1);
    }

    @ParameterizedTest
    @CsvSource({"3.5, 1.5, HIGH", "3.0, 1.0, HIGH", "4.5, 2.5, HIGH", "2.5, 2.5, HIGH", "3.0, 1.0, LOW", "4.5, 0.5, LOW"
    })
    void the_input_sees_straight_edges_at_its_thresholds(double rising, double falling, ActiveLevel active) {
        // d + r (1 - (R + F) / S) of a high pulse with edges of 100 us over 0 to 5 V; a low pulse has the rest of the
        // period
        TestSignal signal = TestSignal.at(1e6, 0.2).ramp(100e-6).levels(0, 5).carrier(200, 1e-3, 0.3);
        ChannelMeasurement channel = Measured.of(Measured.capture(signal), withInput(rising, falling, active))
                .channels()
                .get(0);
        double high = 0.3 * PERIOD + 100e-6 * (1 - (rising + falling) / 5);
        double seconds = active == ActiveLevel.HIGH ? high : PERIOD - high;
        assertThat(Measured.statistic(channel, "input-pulse-duration").mean()).isCloseTo(seconds, within(1e-11));
        assertThat(Measured.statistic(channel, "input-duty").mean()).isCloseTo(100 * seconds / PERIOD, within(1e-7));
    }

    @ParameterizedTest
    @CsvSource({"10e-6", "32.6e-6", "69.3e-6"})
    void a_weak_pull_up_costs_duty_at_the_input(double tau) {
        // an exponential edge passes 70 % at tau ln(1 / 0.3), the fast falling edge 30 % at once
        double[] samples = new double[200_000];
        for (int i = 0; i < samples.length; i++) {
            double since = (i + 0.5) * 1e-6 % PERIOD;
            samples[i] = since < 2e-3 ? 5 * (1 - Math.exp(-since / tau)) : 0;
        }
        Capture capture = Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 1e6, samples);
        ChannelMeasurement channel = Measured.of(capture, withInput(3.5, 1.5, ActiveLevel.HIGH))
                .channels()
                .get(0);
        Statistic atInput = Measured.statistic(channel, "input-duty");
        double expected = 100 * (2e-3 - tau * Math.log(1 / 0.3)) / PERIOD;
        // the falling edge lies anywhere within a sample: 1 us of 5 ms
        assertThat(atInput.mean()).isCloseTo(expected, within(0.02));
        assertThat(Measured.statistic(channel, "duty").mean() - atInput.mean())
                .isCloseTo(100 * tau * Math.log(0.5 / 0.3) / PERIOD, within(0.02));
    }

    @Test
    void noise_on_edges_makes_the_input_no_second_edge_and_stays_within_u() {
        TestSignal signal =
                TestSignal.at(200e3, 2).ramp(100e-6).levels(0, 5).noise(0.1, 8).carrier(200, 1e-3, 0.3);
        ChannelMeasurement channel = Measured.of(Measured.capture(signal), withInput(3.5, 1.0, ActiveLevel.HIGH))
                .channels()
                .get(0);
        Statistic atInput = Measured.statistic(channel, "input-duty");
        double expected = 30 + 100 * 100e-6 * (1 - 4.5 / 5) / PERIOD;
        assertThat(Math.abs(atInput.mean() - expected)).isLessThan(3 * atInput.u());
        assertThat(atInput.u()).isLessThan(0.05);
    }

    @Test
    void a_signal_that_does_not_reach_a_threshold_has_no_duty_at_the_input() {
        TestSignal signal = TestSignal.at(100e3, 0.2).ramp(50e-6).levels(0, 3).carrier(200, 1e-3, 0.3);
        ChannelMeasurement channel = Measured.of(Measured.capture(signal), withInput(3.5, 1.5, ActiveLevel.HIGH))
                .channels()
                .get(0);
        assertThat(reason(channel)).contains("both thresholds");
        assertThat(reason(Measured.pwm(signal))).contains("not known");
    }

    private static String reason(ChannelMeasurement channel) {
        return ((Outcome.Absent) channel.results().get("input-duty").outcome()).reason();
    }
}
