// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Channel;
import org.dutywright.capture.EvenTimeBase;
import org.dutywright.capture.Samples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a channel is taken for, and what is said where it carries no pulses. */
class StatusTest {
    private static Capture capture(IntToDoubleFunction volts) {
        double[] values = IntStream.range(0, 100_000).mapToDouble(volts).toArray();
        return Captures.ofArrays(List.of("a"), List.of("V"), 0, 100e3, values);
    }

    private static ChannelMeasurement pwm(IntToDoubleFunction volts) {
        return Measured.of(capture(volts), Measured.plan(Role.PWM)).channels().get(0);
    }

    private static double sine(int i) {
        return 5 + 5 * Math.sin(2 * Math.PI * 200 * i / 100e3);
    }

    private static double triangle(int i) {
        return Math.abs(i % 500 - 250) / 25.0;
    }

    @Test
    void a_sine_a_triangle_and_noise_have_no_two_states() {
        Random random = new Random(3);
        for (IntToDoubleFunction volts : List.<IntToDoubleFunction>of(
                StatusTest::sine,
                StatusTest::triangle,
                i -> sine(i) + 0.3 * random.nextGaussian(),
                i -> 6 + 2 * random.nextGaussian(),
                i -> 10 * random.nextDouble())) {
            ChannelMeasurement channel = pwm(volts);
            assertThat(channel.status()).isEqualTo(Status.NO_SIGNAL);
            assertThat(channel.statusReason()).isNotBlank();
            assertThat(channel.eventCounts()).isEmpty();
            assertThat(channel.cycleCount()).isZero();
            assertThat(channel.results().values())
                    .allMatch(it -> it.outcome().equals(new Outcome.Absent(channel.statusReason())));
        }
    }

    @Test
    void without_a_role_two_states_and_transitions_make_a_pwm_channel_and_anything_else_a_level() {
        assertThat(Measured.of(capture(StatusTest::sine)).channels().get(0).role())
                .isEqualTo(Role.LEVEL);
        assertThat(Measured.of(capture(i -> 12.5)).channels().get(0).role()).isEqualTo(Role.LEVEL);
        assertThat(Measured.of(capture(i -> i % 500 < 100 ? 1 : 0))
                        .channels()
                        .get(0)
                        .role())
                .isEqualTo(Role.PWM);
    }

    @Test
    void a_level_reports_mean_extremes_and_rms() {
        ChannelMeasurement channel =
                Measured.of(capture(StatusTest::sine)).channels().get(0);
        LevelSummary level = channel.level().orElseThrow();
        // whole periods of 5 V + 5 V sin: mean 5 V, rms sqrt(25 + 12.5) V (closed form)
        assertThat(level.mean().value()).isCloseTo(5, within(1e-12));
        assertThat(level.rms()).isCloseTo(Math.sqrt(37.5), within(1e-12));
        assertThat(level.min()).isCloseTo(0, within(1e-12));
        assertThat(level.max()).isCloseTo(10, within(1e-12));
        assertThat(channel.status()).isEqualTo(Status.OK);
    }

    @ParameterizedTest
    @CsvSource({"0.05, STUCK_LOW", "1.0, STUCK_LOW", "1.2, STUCK_HIGH", "12.4, STUCK_HIGH"})
    void alone_a_steady_level_above_one_volt_is_stuck_high(double volts, Status expected) {
        Random random = new Random(1);
        ChannelMeasurement channel = pwm(i -> volts);
        assertThat(channel.status()).isEqualTo(expected);
        if (volts != 1) {
            assertThat(pwm(i -> volts + 0.05 * random.nextGaussian()).status()).isEqualTo(expected);
        }
        EventKind kind = expected == Status.STUCK_HIGH ? EventKind.STUCK_HIGH : EventKind.STUCK_LOW;
        assertThat(channel.eventCounts()).containsOnlyKeys(kind);
        assertThat(channel.events().get(0).startSeconds()).isEqualTo(0);
        assertThat(channel.events().get(0).endSeconds()).isCloseTo(0.99999, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"0.2, STUCK_LOW", "1.2, STUCK_LOW", "5.8, STUCK_LOW", "6.2, STUCK_HIGH", "11.9, STUCK_HIGH"})
    void beside_another_channel_a_steady_level_goes_to_the_nearer_of_its_levels(double volts, Status expected) {
        double[] healthy =
                TestSignal.at(100e3, 0.5).levels(0, 12).carrier(200, 1e-3, 0.3).samples();
        double[] steady = new double[healthy.length];
        Arrays.fill(steady, volts);
        Capture capture = Captures.ofArrays(List.of("a", "b"), List.of("V", "V"), 0, 100e3, steady, healthy);
        CaptureMeasurement measured = Measured.of(capture, Measured.plan(Role.PWM), Measured.plan(Role.PWM));
        assertThat(measured.channels().get(0).status()).isEqualTo(expected);
        assertThat(measured.channels().get(1).eventCounts()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"12, STUCK_HIGH", "0, STUCK_LOW"})
    void the_flicker_of_one_or_two_codes_is_no_signal(double volts, Status expected) {
        // rare, frequent and slowly swelling flicker, and noise of one code around the middle between two codes
        Random random = new Random(2);
        for (IntToDoubleFunction codes : List.<IntToDoubleFunction>of(
                i -> random.nextInt(50) == 0 ? 1 : 0,
                i -> random.nextInt(3) == 0 ? 1 : 0,
                i -> Math.sin(i / 2000.0) + 0.2 * random.nextGaussian() > 0 ? 1 : 0,
                i -> Math.rint(0.5 + random.nextGaussian()))) {
            double[] values = IntStream.range(0, 100_000)
                    .mapToDouble(i -> volts + 0.0625 * codes.applyAsDouble(i))
                    .toArray();
            Capture capture = Captures.ofArrays(List.of("a"), List.of("V"), 0, 100e3, values);
            assertThat(Measured.of(capture).channels().get(0).role()).isEqualTo(Role.LEVEL);
            assertThat(Measured.of(capture, Measured.plan(Role.PWM))
                            .channels()
                            .get(0)
                            .status())
                    .isEqualTo(expected);
        }
    }

    @Test
    void a_lone_spike_makes_no_signal_of_a_stuck_line() {
        assertThat(pwm(i -> i == 5000 || i == 5001 ? 0 : 12).status()).isEqualTo(Status.STUCK_HIGH);
    }

    @Test
    void pulses_in_a_small_part_of_a_long_recording_are_found() {
        // 20 pulses of 0.5 ms in 30 s: 0.03 % of the samples
        TestSignal signal =
                TestSignal.at(20e3, 30).levels(0.3, 11.8).noise(0.05, 3).carrier(200, 10, 0.1);
        signal.pieces().removeIf(it -> it.riseSeconds() > 10.0999);
        ChannelMeasurement channel = Measured.pwm(signal);
        assertThat(channel.status()).isEqualTo(Status.OK);
        assertThat(channel.cycleCount()).isEqualTo(19);
        assertThat(channel.eventCounts()).containsOnlyKeys(EventKind.STUCK_LOW);
    }

    @Test
    void too_few_samples_a_pulse_are_unreadable() {
        Random random = new Random(8);
        boolean[] high = new boolean[1];
        ChannelMeasurement channel = pwm(i -> (high[0] ^= random.nextInt(10) < 7) ? 10 : 0);
        assertThat(channel.status()).isEqualTo(Status.UNREADABLE);
        assertThat(channel.statusReason()).contains("sample rate");
        CaptureMeasurement measured = Measured.of(capture(i -> i % 2 * 10.0), Measured.plan(Role.PWM));
        assertThat(measured.fitness())
                .anyMatch(it -> it.item().equals("a.samplesPerPulse") && it.grade() == Fitness.Grade.UNFIT);
    }

    @ParameterizedTest
    @EnumSource(value = Role.class, names = "PWM", mode = EnumSource.Mode.EXCLUDE)
    void other_roles_have_no_pulses(Role role) {
        Capture capture = capture(i -> i % 500 < 100 ? 1 : 0);
        ChannelMeasurement channel =
                Measured.of(capture, Measured.plan(role)).channels().get(0);
        assertThat(channel.role()).isEqualTo(role);
        assertThat(channel.status()).isEqualTo(Status.OK);
        assertThat(channel.cycleCount()).isZero();
        assertThat(channel.events()).isEmpty();
        assertThat(channel.level().isPresent()).isEqualTo(role != Role.IGNORE);
        assertThat(channel.levels().isPresent()).isEqualTo(role == Role.SWITCH);
        assertThat(channel.results())
                .containsKey("duty")
                .allSatisfy((id, result) -> assertThat(result.outcome()).isInstanceOf(Outcome.Absent.class));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void a_capture_of_a_few_samples_is_stuck_or_a_level(int samples) {
        Capture capture = Captures.ofArrays(List.of("a"), List.of("V"), 0, 1e3, new double[samples]);
        assertThat(Measured.of(capture, Measured.plan(Role.PWM))
                        .channels()
                        .get(0)
                        .status())
                .isEqualTo(Status.STUCK_LOW);
        assertThat(Measured.of(capture).channels().get(0).role()).isEqualTo(Role.LEVEL);
    }

    @Test
    void a_capture_without_samples_says_so() {
        Samples none = new Samples() {
            @Override
            public int channelCount() {
                return 1;
            }

            @Override
            public long sampleCount() {
                return 0;
            }

            @Override
            public void read(int channel, long firstSample, double[] target, int offset, int count) {
                Objects.checkFromIndexSize(firstSample, count, 0L);
            }

            @Override
            public void close() {}
        };
        Capture capture =
                new Capture(List.of(), List.of(new Channel("a", "V")), EvenTimeBase.of(1e3, List.of()), none, Map.of());
        ChannelMeasurement channel =
                Measured.of(capture, Measured.plan(Role.PWM)).channels().get(0);
        assertThat(channel.status()).isEqualTo(Status.NO_SIGNAL);
        assertThat(channel.statusReason()).isEqualTo("the capture has no samples");
        assertThat(channel.level()).isEmpty();
        assertThat(Measured.of(capture).channels().get(0).status()).isEqualTo(Status.OK);
    }
}
