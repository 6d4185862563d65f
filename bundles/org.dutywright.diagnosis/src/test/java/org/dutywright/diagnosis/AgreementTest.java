// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.Fitness;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.SensorChannel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AgreementTest {
    @Test
    void aConstantOffsetIsFoundInTravelAndNotInDuty() throws IOException {
        // signal1 at 30 % travel is 20.5 % duty; signal2 at 35 % travel is 44.5 % duty (closed form).
        AgreementResult result = compare(one(200, 0, t -> 30), two(203, 0.0017, t -> 35));
        assertThat(result.maxDifferencePercent()).isCloseTo(5, within(1e-9));
        assertThat(result.limitPercent()).isEqualTo(4);
        assertThat(result.movingLimitPercent()).isEqualTo(8);
        assertThat(result.channels()).containsExactly("signal1", "signal2");
        assertThat(result.wouldFlag()).isTrue();
        // signal1's cycles from 0 to 2 s, of which those are compared that have cycles of signal2 around.
        assertThat(result.longestBeyondLimitSeconds()).isCloseTo(2, within(0.02));
    }

    @Test
    void aDifferenceAtTheLimitIsWithinIt() throws IOException {
        // 4 % of travel is 1.4 points of duty on signal1; a hair is taken off for the rounding of the division.
        AgreementResult result = compare(one(200, 0, t -> 34 - 1e-9), two(200, 0, t -> 30));
        assertThat(result.wouldFlag()).isFalse();
        assertThat(result.longestBeyondLimitSeconds()).isZero();
        assertThat(result.longestStartSeconds()).isEmpty();
    }

    // n cycles of 5 ms beyond the limit in a row are n x 5 ms; the confirmation time is 200 ms.
    @ParameterizedTest
    @CsvSource({"39, 0.195, false", "40, 0.200, true", "41, 0.205, true", "1, 0.005, false"})
    void theConfirmationTimeIsReachedByTheCyclesBeyondTheLimit(int cycles, double seconds, boolean flag)
            throws IOException {
        double end = 1 + cycles * 0.005;
        AgreementResult result = compare(one(200, 0, t -> t > 1 && t < end ? 40 : 30), two(200, 0, t -> 30));
        assertThat(result.longestBeyondLimitSeconds()).isCloseTo(seconds, within(1e-9));
        assertThat(result.longestStartSeconds().orElseThrow()).isCloseTo(1, within(1e-9));
        assertThat(result.wouldFlag()).isEqualTo(flag);
    }

    @Test
    void oneGoodCycleBetweenTwoBadStretchesBreaksTheTime() throws IOException {
        AgreementResult result =
                compare(one(200, 0, t -> t > 1 && t < 1.3 && !(t > 1.15 && t < 1.155) ? 40 : 30), two(200, 0, t -> 30));
        assertThat(result.longestBeyondLimitSeconds()).isCloseTo(0.15, within(1e-9));
        assertThat(result.wouldFlag()).isFalse();
    }

    @Test
    void aDisturbedCycleOfEitherChannelBreaksTheTime() throws IOException {
        MeasuredChannel bad = one(200, 0, t -> t > 1 && t < 1.3 ? 40 : 30);
        assertThat(compare(bad.disturbed(1.151, 1.154), two(200, 0, t -> 30)).longestBeyondLimitSeconds())
                .isCloseTo(0.15, within(1e-9));

        MeasuredChannel again = one(200, 0, t -> t > 1 && t < 1.3 ? 40 : 30);
        MeasuredChannel disturbed = two(200, 0.0025, t -> 30).disturbed(1.151, 1.154);
        // Two middles of signal2 fall out, and with them the instants of signal1 between.
        assertThat(compare(again, disturbed).longestBeyondLimitSeconds()).isBetween(0.14, 0.15);
    }

    @Test
    void aGapInTheRecordingBreaksTheTimeAndIsNotInterpolatedOver() throws IOException {
        DoubleUnaryOperator travel = t -> t > 1 && t < 1.3 ? 40 : 30;
        AgreementResult result = compare(
                one(200, 0, travel).without(1.15, 1.2), two(203, 0.001, t -> 30).without(1.15, 1.2));
        assertThat(result.longestBeyondLimitSeconds()).isCloseTo(0.15, within(0.011));
        assertThat(result.wouldFlag()).isFalse();
    }

    @Test
    void disturbedCyclesAreNeitherComparedNorInterpolatedOver() throws IOException {
        // signal2 shows nonsense in a disturbed stretch while both move on.
        MeasuredChannel two =
                two(203, 0.001, t -> t > 0.9 && t < 1.1 ? 80 : 25 * t).disturbed(0.89, 1.11);
        AgreementResult result = compare(one(200, 0, t -> 25 * t), two);
        assertThat(result.maxDifferencePercent()).isLessThan(1e-6);
        // 400 cycles less those of 0.22 s and the ends.
        assertThat(result.comparedInstants()).isBetween(350L, 357L);
    }

    // Raised-cosine strokes of 80 ms, the fastest a foot can do, on carriers that are not synchronous. The duty of a
    // cycle is that at its middle; linear interpolation is then off by at most 77,106 %/s^2 x (5 ms)^2 / 8 = 0.24 %
    // (closed form of the largest second difference).
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.0004, 0.0011, 0.0023, 0.0037, 0.0049})
    void fastStrokesOnUnsynchronisedCarriersAgree(double phaseSeconds) throws IOException {
        DoubleUnaryOperator strokes = t -> 50 - 50 * Math.cos(Math.PI * t / 0.08);
        AgreementResult result = compare(one(200, 0, strokes), two(203.7, phaseSeconds, strokes));
        assertThat(result.maxDifferencePercent()).isLessThan(0.26);
        assertThat(result.wouldFlag()).isFalse();
    }

    // Sharp corners: the speed changes by 1250 %/s within a cycle, so by at most 1250 x 5 ms / 4 = 1.6 % of travel.
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.0011, 0.0023, 0.0037})
    void fastStrokesWithCornersStayWithinTheLimitAtRest(double phaseSeconds) throws IOException {
        DoubleUnaryOperator strokes = t -> Math.clamp(1250 * Math.min(t % 0.5 - 0.1, 0.4 - t % 0.5), 0, 100);
        AgreementResult result = compare(one(200, 0, strokes), two(197, phaseSeconds, strokes));
        assertThat(result.maxDifferencePercent()).isLessThan(1.7);
    }

    @Test
    void theMovingLimitHoldsOnlyWhileBothMove() throws IOException {
        // A lag of 50 ms at 120 %/s is 6 % of travel: beyond the limit at rest, within the moving one.
        DoubleUnaryOperator ramp = t -> Math.clamp(120 * (t - 0.5), 0, 100);
        AgreementResult result = compare(one(200, 0, ramp), two(200, 0, t -> ramp.applyAsDouble(t - 0.05)));
        assertThat(result.maxDifferencePercent()).isCloseTo(6, within(1e-6));
        // Only while just one of the two moves, at both ends of the ramp, does the limit at rest count: 50 ms less
        // the time until 4 % are reached, plus the two cycles that the window looks ahead.
        assertThat(result.longestBeyondLimitSeconds()).isLessThan(0.03);

        // The same difference at 40 %/s, slower than 50 %/s, is beyond the limit all the time.
        DoubleUnaryOperator slow = t -> Math.clamp(40 * (t - 0.1), 0, 100);
        AgreementResult flagged = compare(one(200, 0, slow), two(200, 0, t -> slow.applyAsDouble(t - 0.15)));
        assertThat(flagged.maxDifferencePercent()).isCloseTo(6, within(1e-6));
        assertThat(flagged.wouldFlag()).isTrue();
    }

    @Test
    void aStuckChannelDoesNotEarnTheMovingLimitFromTheOther() throws IOException {
        DoubleUnaryOperator fast = t -> 6 * Math.sin(2 * Math.PI * 4 * t);
        AgreementResult result = compare(one(200, 0, t -> 50), two(200, 0, t -> 50 + fast.applyAsDouble(t)));
        assertThat(result.maxDifferencePercent()).isBetween(5.9, 6.000001);
        assertThat(result.longestBeyondLimitSeconds()).isGreaterThan(0.05);
    }

    @Test
    void noiseWellBelowTheLimitDoesNotFlagAndDoesNotCountAsMovement() throws IOException {
        Random random = new Random(7);
        AgreementResult quiet = compare(
                one(200, 0, t -> 30 + 0.3 * random.nextGaussian()),
                two(203, 0.001, t -> 30 + 0.3 * random.nextGaussian()));
        assertThat(quiet.longestBeyondLimitSeconds()).isZero();

        AgreementResult apart = compare(
                one(200, 0, t -> 30 + 0.3 * random.nextGaussian()),
                two(203, 0.001, t -> 36 + 0.3 * random.nextGaussian()));
        // 6 % apart with 0.3 % of noise: the smallest of 400 differences stays above 4 %, so the time is unbroken.
        assertThat(apart.longestBeyondLimitSeconds()).isGreaterThan(1.9);
    }

    @Test
    void ofThreeChannelsTheWorstPairIsReported() throws IOException {
        SensorChannel third = new SensorChannel(
                "signal3",
                true,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Sensors.duty(10, 90, 2)),
                OptionalDouble.empty());
        Sensor sensor = Sensors.of(Sensors.signal1(), Sensors.signal2(), third);
        MeasuredChannel three = MeasuredChannel.named("signal3").carrier(199, 0.002, 2, t -> 10 + 0.8 * 36);
        AgreementResult result = outcome(
                        sensor,
                        Checks.measurement(
                                List.of(),
                                one(200, 0, t -> 30).build(),
                                two(203, 0.001, t -> 33).build(),
                                three.build()))
                .result()
                .orElseThrow();
        assertThat(result.channels()).containsExactly("signal1", "signal3");
        assertThat(result.maxDifferencePercent()).isCloseTo(6, within(1e-9));
    }

    @Test
    void withoutAMovingLimitTheOneAtRestAlwaysHolds() throws IOException {
        Sensor twin = Sensors.twin();
        Sensor sensor = new Sensor(
                twin.id(),
                twin.title(),
                twin.origin(),
                twin.quantity(),
                twin.supply(),
                twin.channels(),
                Optional.of(new Sensor.Agreement(4, OptionalDouble.empty(), OptionalDouble.empty(), 0.2)),
                twin.events(),
                twin.decision());
        DoubleUnaryOperator ramp = t -> Math.clamp(120 * (t - 0.5), 0, 100);
        AgreementResult result = outcome(
                        sensor,
                        Checks.measurement(
                                List.of(),
                                one(200, 0, ramp).build(),
                                two(200, 0, t -> ramp.applyAsDouble(t - 0.05)).build()))
                .result()
                .orElseThrow();
        assertThat(result.movingLimitPercent()).isEqualTo(4);
        assertThat(result.wouldFlag()).isTrue();
    }

    @Test
    void whatCannotBeComparedIsSaidWithItsReason() throws IOException {
        assertThat(outcome(
                                Sensors.twin(),
                                Checks.measurement(
                                        List.of(), one(200, 0, t -> 30).build()))
                        .absent())
                .contains("signal2 has no channel in the capture");

        Fitness poor = new Fitness("signal2.samplesPerPulse", Fitness.Grade.POOR, "9 samples a pulse");
        assertThat(outcome(
                                Sensors.twin(),
                                Checks.measurement(
                                        List.of(poor),
                                        one(200, 0, t -> 30).build(),
                                        two(203, 0, t -> 30).build()))
                        .absent())
                .contains("signal2 is recorded too poorly: 9 samples a pulse");

        assertThat(outcome(
                                Sensors.twin(),
                                Checks.measurement(
                                        List.of(),
                                        one(200, 0, t -> 30).build(),
                                        two(203, 0, t -> 30).disturbed(0, 2).build()))
                        .absent())
                .isEqualTo("the channels have no undisturbed cycles at the same time");
    }

    private static MeasuredChannel one(double hz, double phaseSeconds, DoubleUnaryOperator travelPercent) {
        return MeasuredChannel.named("signal1")
                .carrier(hz, phaseSeconds, 2, t -> 10 + 0.35 * travelPercent.applyAsDouble(t));
    }

    private static MeasuredChannel two(double hz, double phaseSeconds, DoubleUnaryOperator travelPercent) {
        return MeasuredChannel.named("signal2")
                .carrier(hz, phaseSeconds, 2, t -> 20 + 0.7 * travelPercent.applyAsDouble(t));
    }

    private static AgreementResult compare(MeasuredChannel one, MeasuredChannel two) throws IOException {
        return outcome(Sensors.twin(), Checks.measurement(List.of(), one.build(), two.build()))
                .result()
                .orElseThrow();
    }

    private static Agreement.Outcome outcome(Sensor sensor, CaptureMeasurement measurement) throws IOException {
        ChannelMatch match = Checker.match(sensor, measurement.capture(), Map.of());
        return Agreement.of(measurement, sensor, match, Progress.NONE);
    }
}
