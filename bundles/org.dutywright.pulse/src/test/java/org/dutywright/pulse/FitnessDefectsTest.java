// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.pulse.Fitness.Grade;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is wrong about how a recording was made is found, each thing at sizes that occur, and said with what to do. */
class FitnessDefectsTest {
    private static final double RATE = 100e3;

    private static Capture capture(double rate, double[]... channels) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < channels.length; i++) {
            names.add("signal" + (i + 1));
        }
        return Captures.ofArrays(names, names.stream().map(it -> "V").toList(), 0, rate, channels);
    }

    private static Fitness line(CaptureMeasurement measured, String item) {
        return measured.fitness().stream()
                .filter(it -> it.item().equals(item))
                .findFirst()
                .orElseThrow(() -> new AssertionError(item + " is not among " + measured.fitness()));
    }

    private static Fitness line(double rate, double[] samples, String aspect) {
        return line(Measured.of(capture(rate, samples), Measured.plan(Role.PWM)), "signal1." + aspect);
    }

    private static TestSignal signal(double noise, double step) {
        // neither the carrier nor its duty is tied to the samples
        return TestSignal.at(RATE, 1)
                .levels(0.4, 12)
                .carrier(203.7, 1e-3, 0.313)
                .noise(noise, 5)
                .quantised(step);
    }

    @ParameterizedTest
    @CsvSource({
        // where the range ends, noise, code step: well below the level, at it, a standard deviation above it
        "11.0, 0.05, 0.004",
        "11.9, 0.02, 0.004",
        "12.0, 0.1, 0.016",
        "12.05, 0.1, 0.016",
        "11.5, 0.08, 0.0625",
        "11.5, 0.05, 0"
    })
    void aRangeThatEndsBelowTheHighLevelIsClipping(double end, double noise, double step) {
        double[] samples = signal(noise, step).samples();
        double most = step > 0 ? Math.rint(end / step) * step : end;
        Fitness clipped =
                line(RATE, Arrays.stream(samples).map(it -> Math.min(it, most)).toArray(), "clipping");
        assertThat(clipped.grade()).as("%s", clipped).isEqualTo(Grade.POOR);
        assertThat(clipped.reason()).contains("high state").contains("choose a larger range");
    }

    @Test
    void aRangeThatEndsAtZeroClipsALowLevelBelowIt() {
        double[] samples = signal(0.1, 0.016).levels(-0.2, 12).samples();
        Fitness clipped =
                line(RATE, Arrays.stream(samples).map(it -> Math.max(it, 0)).toArray(), "clipping");
        assertThat(clipped.grade()).as("%s", clipped).isEqualTo(Grade.POOR);
        assertThat(clipped.reason()).contains("low state").contains("exactly 0.000 V");
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "0, 0.0625", "0.005, 0.0625", "0.02, 0.0625", "0.04, 0.0625"})
    void aCleanFlatLevelIsNoClipping(double noise, double step) {
        for (int k = 0; k < 10; k++) {
            // levels anywhere between two codes: one may flicker while the other one does not
            double[] samples = signal(noise, step)
                    .levels(0.4 + k * 0.0071, 12 + k * 0.0113)
                    .samples();
            assertThat(line(RATE, samples, "clipping").grade()).isEqualTo(Grade.GOOD);
        }
    }

    @Test
    void aSlowRiseToAFlatLevelIsNoClipping() {
        // a single pole of 30 us into the high state, and none into the low one, without noise: the last part is flat
        double[] samples = signal(0, 0).samples();
        for (int i = 1; i < samples.length; i++) {
            if (samples[i] > 6) {
                samples[i] = samples[i - 1] + (12 - samples[i - 1]) * (1 - Math.exp(-1 / (30e-6 * RATE)));
            }
        }
        assertThat(line(RATE, samples, "clipping").grade()).isEqualTo(Grade.GOOD);
    }

    /** The smallest and the largest of each {@code bin} samples. */
    private static double[] reduced(double[] samples, int bin, boolean smallestFirst) {
        double[] pairs = new double[samples.length / bin * 2];
        for (int i = 0; i < samples.length / bin; i++) {
            double[] part = Arrays.copyOfRange(samples, i * bin, (i + 1) * bin);
            Arrays.sort(part);
            pairs[2 * i] = smallestFirst ? part[0] : part[bin - 1];
            pairs[2 * i + 1] = smallestFirst ? part[bin - 1] : part[0];
        }
        return pairs;
    }

    @ParameterizedTest
    @CsvSource({"0.05, 0.016, 10, true", "0.3, 0.0625, 4, false", "0, 0, 10, true", "0.02, 0.0625, 20, false"})
    void pairsOfExtremesAreAReducedExport(double noise, double step, int bin, boolean smallestFirst) {
        double[] pairs = reduced(signal(noise, step).samples(), bin, smallestFirst);
        Fitness found = line(2 * RATE / bin, pairs, "minMaxPairs");
        assertThat(found.grade()).as("%s", found).isEqualTo(Grade.POOR);
        assertThat(found.reason()).contains("export all samples");
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void pulsesNeverShorterThanOneLengthAreStretched(boolean activeLow) {
        // the duty runs from 1 to 11 % and back; the instrument makes no pulse shorter than 150 us of its own clock
        TestSignal signal = TestSignal.at(RATE, 3)
                .levels(activeLow ? 5 : 0, activeLow ? 0 : 5)
                .carrier(203.7, 1e-3, t -> 0.01 + 0.1 * Math.abs(1 - t % 2));
        double[] samples = signal.samples();
        stretch(samples, activeLow ? 0 : 5, 15);
        Fitness found = line(RATE, samples, "stretchedPulses");
        assertThat(found.grade()).as("%s", found).isEqualTo(Grade.POOR);
        assertThat(found.reason()).contains("exactly 15 samples").contains("150.0 µs");
    }

    private static void stretch(double[] samples, double active, int least) {
        int length = 0;
        for (int i = 0; i < samples.length; i++) {
            if (samples[i] == active) {
                length++;
            } else if (length > 0 && length < least) {
                samples[i] = active;
                length++;
            } else {
                length = 0;
            }
        }
    }

    @Test
    void aDutyThatRestsAtAnEndOfItsTravelIsNotStretched() {
        double[] samples = TestSignal.at(RATE, 3)
                .levels(0, 5)
                .carrier(203.7, 1e-3, t -> 0.05 + 0.3 * Math.clamp(t - 1, 0, 1))
                .samples();
        assertThat(line(RATE, samples, "stretchedPulses").grade()).isEqualTo(Grade.GOOD);
    }

    @ParameterizedTest
    @CsvSource({"-1.0, POOR", "-0.5, GOOD", "2.5, GOOD"})
    void aLowLevelBelowZeroIsABaseLineOffZero(double low, Grade expected) {
        Fitness found = line(RATE, signal(0.05, 0.016).levels(low, low + 12).samples(), "baseLine");
        assertThat(found.grade()).as("%s", found).isEqualTo(expected);
    }

    @Test
    void theBaseLineIsThatOfTheRecordedGround() {
        double[] pulses = signal(0.05, 0.016).levels(-2, 10).samples();
        double[] ground = new double[pulses.length];
        Arrays.fill(ground, -2.1);
        CaptureMeasurement measured =
                Measured.of(capture(RATE, pulses, ground), Measured.plan(Role.PWM), Measured.plan(Role.GROUND));
        assertThat(line(measured, "signal1.baseLine").grade()).isEqualTo(Grade.GOOD);
    }

    @Test
    void oneChannelAboveAnotherOneOfTheSameSwingIsOffByItself() {
        double[] one = signal(0.05, 0.016).samples();
        double[] other = signal(0.05, 0.016).levels(4.4, 16).samples();
        CaptureMeasurement measured =
                Measured.of(capture(RATE, one, other), Measured.plan(Role.PWM), Measured.plan(Role.PWM));
        assertThat(line(measured, "signal1.baseLine").grade()).isEqualTo(Grade.GOOD);
        assertThat(line(measured, "signal2.baseLine").grade()).isEqualTo(Grade.POOR);
    }

    @ParameterizedTest
    // step 50 us: edges within a sample may take up to 100 us; step 10 us: 20 us
    @CsvSource({"20000, 99e-6, POOR", "20000, 101e-6, GOOD", "100000, 19e-6, POOR", "100000, 100e-6, GOOD"})
    void unresolvedEdgesCarryNoVerdictOnAShortLimit(double rate, double limit, Grade expected) {
        ChannelPlan plan =
                new ChannelPlan(Optional.of(Role.PWM), Optional.empty(), Optional.empty(), OptionalDouble.of(limit));
        TestSignal signal = TestSignal.at(rate, 1).carrier(203.7, 1e-3, 0.3);
        Fitness found = line(Measured.of(Measured.capture(signal), plan), "signal1.samplesPerEdge");
        assertThat(found.grade()).as("%s", found).isEqualTo(expected);
        assertThat(found.reason().contains("; record at")).isEqualTo(expected == Grade.POOR);
    }

    @Test
    void edgesWithEnoughSamplesAreGoodWhateverTheLimit() {
        ChannelPlan plan =
                new ChannelPlan(Optional.of(Role.PWM), Optional.empty(), Optional.empty(), OptionalDouble.of(30e-6));
        TestSignal signal = TestSignal.at(RATE, 1).ramp(60e-6).carrier(203.7, 1e-3, 0.3);
        assertThat(line(Measured.of(Measured.capture(signal), plan), "signal1.samplesPerEdge")
                        .grade())
                .isEqualTo(Grade.GOOD);
    }

    @ParameterizedTest
    @CsvSource({"1.0, POOR", "0.5, GOOD"})
    void fewCodeStepsInTheSwingArePoor(double step, Grade expected) {
        // 11.6 V in steps of 1 V are 12 steps, fewer than 20; of 0.5 V 23
        Fitness found = line(RATE, signal(0.6 * step, step).samples(), "levelResolution");
        assertThat(found.grade()).as("%s", found).isEqualTo(expected);
    }

    @Test
    void fewerThanTwoSamplesAPulseAreRefusedWithAllNumbers() {
        // 12 % of 203.7 Hz at 3 kS/s are 1.8 samples
        Random random = new Random(4);
        double[] samples = TestSignal.at(3e3, 4)
                .levels(0.4, 12)
                .carrier(203.7, random.nextDouble() * 1e-3, 0.12)
                .samples();
        CaptureMeasurement measured = Measured.of(capture(3e3, samples), Measured.plan(Role.PWM));
        ChannelMeasurement channel = measured.channels().get(0);
        Fitness found = line(measured, "signal1.samplesPerPulse");
        assertThat(found.grade()).as("%s", found).isEqualTo(Grade.UNFIT);
        assertThat(found.reason()).contains("faster carrier").contains("record at a higher sample rate");
        assertThat(channel.status()).isEqualTo(Status.UNREADABLE);
        assertThat(channel.cycleCount()).isZero();
        assertThat(channel.medianPeriodSeconds()).isEmpty();
        assertThat(channel.eventCounts()).isEqualTo(Map.of());
        assertThat(channel.results().values())
                .isNotEmpty()
                .allMatch(it -> it.outcome().equals(new Outcome.Absent(channel.statusReason())));
    }

    /** Behind a single-pole high pass that has settled on the mean. */
    private static double[] coupled(double[] samples, double cornerHertz) {
        double kept = Math.exp(-2 * Math.PI * cornerHertz / RATE);
        double[] seen = new double[samples.length];
        seen[0] = samples[0] - Arrays.stream(samples).average().orElseThrow();
        for (int i = 1; i < samples.length; i++) {
            seen[i] = kept * (seen[i - 1] + samples[i] - samples[i - 1]);
        }
        return seen;
    }

    @ParameterizedTest
    @CsvSource({"0.5, 0, 0", "1, 0.02, 0.004", "5, 0.1, 0.016", "20, 0.2, 0.0625"})
    void aRecordingCoupledByAcHasItsDutyAndNoLevels(double cornerHertz, double noise, double step) {
        double[] direct = TestSignal.at(RATE, 2)
                .levels(0.4, 12)
                .ramp(30e-6)
                .carrier(203.7, 1e-3, 0.313)
                .samples();
        Random random = new Random(8);
        double[] seen = Arrays.stream(coupled(direct, cornerHertz))
                .map(it -> it + noise * random.nextGaussian())
                .map(it -> step > 0 ? Math.rint(it / step) * step : it)
                .toArray();
        CaptureMeasurement measured = Measured.of(capture(RATE, seen), Measured.plan(Role.PWM));
        ChannelMeasurement channel = measured.channels().get(0);
        Fitness found = line(measured, "signal1.coupling");
        assertThat(found.grade()).as("%s", found).isEqualTo(Grade.UNFIT);
        assertThat(found.reason()).contains("set it to DC");
        assertThat(line(measured, "signal1.baseLine").grade()).isEqualTo(Grade.GOOD);
        assertThat(channel.levels()).isEmpty();
        for (String id : List.of("mean-voltage", "rms-voltage", "input-duty")) {
            assertThat(channel.results().get(id).outcome()).as(id).isEqualTo(new Outcome.Absent(found.reason()));
        }
        // a corner of 20 Hz moves the 50 % instants of a ramp of 30 us by less than 0.01 points; the rest is noise
        assertThat(Measured.statistic(channel, "duty").mean()).isCloseTo(31.3, within(0.02));
        assertThat(Measured.statistic(channel, "frequency").mean()).isCloseTo(203.7, within(0.01));
    }

    @Test
    void aProbeThatOvershootsIsNotCoupledByAc() {
        // both states run back from 3 % of overshoot with 400 us, about a mean that stays
        double[] direct = signal(0, 0).samples();
        double[] seen = direct.clone();
        double over = 0;
        for (int i = 1; i < seen.length; i++) {
            over = (over + 0.03 * (direct[i] - direct[i - 1])) * Math.exp(-1 / (400e-6 * RATE));
            seen[i] = direct[i] + over;
        }
        CaptureMeasurement measured = Measured.of(capture(RATE, seen), Measured.plan(Role.PWM));
        assertThat(line(measured, "signal1.coupling").grade()).isEqualTo(Grade.GOOD);
        assertThat(measured.channels().get(0).levels()).isPresent();
    }
}
