// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.EvenTimeBase;
import org.dutywright.capture.Segment;
import org.dutywright.capture.StatedRate;
import org.dutywright.pulse.Fitness.Grade;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Input that nobody wants and everybody has: each gives a plain answer, and no number is made up. */
class OddInputTest {
    private static CaptureMeasurement measure(double rate, double... volts) {
        return Measured.of(
                Captures.ofArrays(List.of("signal1"), List.of("V"), 0, rate, volts), Measured.plan(Role.PWM));
    }

    private static ChannelMeasurement channel(double rate, double... volts) {
        return measure(rate, volts).channels().get(0);
    }

    private static double[] samples(int count, IntToDoubleFunction volts) {
        return IntStream.range(0, count).mapToDouble(volts).toArray();
    }

    /** All numbers of a channel are finite, whatever they are. */
    private static void assertFinite(ChannelMeasurement channel) {
        channel.levels().ifPresent(it -> assertFinite(it.low(), it.high()));
        channel.level().ifPresent(it -> {
            assertFinite(it.mean());
            assertThat(List.of(it.min(), it.max(), it.rms())).allMatch(Double::isFinite);
        });
        channel.results().values().forEach(result -> {
            if (result.outcome() instanceof Outcome.OfCycles cycles) {
                Statistic it = cycles.statistic();
                assertThat(List.of(it.mean(), it.min(), it.max(), it.sd(), it.u(), it.u95()))
                        .as(result.id())
                        .allMatch(Double::isFinite);
            } else if (result.outcome() instanceof Outcome.Single single) {
                assertFinite(single.value());
            }
        });
    }

    private static void assertFinite(Uncertain... values) {
        for (Uncertain it : values) {
            assertThat(List.of(it.value(), it.u(), it.u95())).allMatch(Double::isFinite);
        }
    }

    @Test
    void oneEdgeGivesBothLevelsAndNoCycle() {
        CaptureMeasurement measured = measure(1e5, samples(20_000, i -> i < 8_000 ? 0.4 : 12));
        ChannelMeasurement channel = measured.channels().get(0);
        assertThat(channel.status()).isEqualTo(Status.OK);
        assertThat(channel.levels().orElseThrow().low().value()).isCloseTo(0.4, within(1e-12));
        assertThat(channel.levels().orElseThrow().high().value()).isCloseTo(12, within(1e-12));
        assertThat(channel.cycleCount()).isZero();
        assertThat(channel.medianPeriodSeconds()).isEmpty();
        assertThat(channel.results().get("frequency").outcome()).isInstanceOf(Outcome.Absent.class);
        assertThat(measured.fitness()).anyMatch(it -> it.item().equals("signal1.cycles") && it.grade() == Grade.UNFIT);
        assertFinite(channel);
    }

    @ParameterizedTest
    // 203.7 Hz from 1 ms on: edges at 1 ms, 5.9 ms, 10.8 ms; a cycle is whole once the next edge was seen
    @CsvSource({"0.004, 0", "0.0055, 0", "0.0065, 1", "0.0115, 2"})
    void aVeryShortCaptureHasTheCyclesThatAreWhole(double seconds, int cycles) {
        TestSignal signal = TestSignal.at(1e5, seconds).noise(0.02, 3).carrier(203.7, 1e-3, 0.3);
        CaptureMeasurement measured = Measured.of(Measured.capture(signal), Measured.plan(Role.PWM));
        ChannelMeasurement channel = measured.channels().get(0);
        assertThat(channel.status()).isEqualTo(Status.OK);
        assertThat(channel.cycleCount()).isEqualTo(cycles);
        assertThat(measured.fitness())
                .anyMatch(it ->
                        it.item().equals("signal1.cycles") && it.grade() == (cycles == 0 ? Grade.UNFIT : Grade.GOOD));
        if (cycles > 0) {
            // one edge a sample wide: within 10 us at either end of 4909 us
            assertThat(Measured.statistic(channel, "period").mean()).isCloseTo(1 / 203.7, within(2e-5));
        }
        assertFinite(channel);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 5, 8})
    void aFewAlternatingSamplesAreNoCarrier(int count) {
        ChannelMeasurement channel = channel(1e3, samples(count, i -> i % 2 * 5.0));
        assertThat(channel.cycleCount()).isZero();
        assertFinite(channel);
    }

    @ParameterizedTest
    @CsvSource({"0, 12", "12, 0", "5, 5.0001", "0.4, -1000"})
    void oneSampleOffAllOthersIsNoSignal(double level, double odd) {
        for (int at : new int[] {0, 1, 5_000, 9_999}) {
            ChannelMeasurement channel = channel(1e5, samples(10_000, i -> i == at ? odd : level));
            assertThat(channel.status()).isIn(Status.STUCK_LOW, Status.STUCK_HIGH, Status.NO_SIGNAL);
            assertThat(channel.cycleCount()).isZero();
            assertFinite(channel);
        }
    }

    @ParameterizedTest
    @CsvSource({"1e30", "1e150", "1e300", "-1e300", "1.7e308"})
    void aHugeValueAmongOrdinaryOnesMakesNoNumberInfinite(double huge) {
        TestSignal signal = TestSignal.at(1e5, 0.2).noise(0.02, 3).carrier(203.7, 1e-3, 0.3);
        double[] volts = signal.samples();
        volts[7_777] = huge;
        ChannelMeasurement channel = channel(1e5, volts);
        assertFinite(channel);
        if (Math.abs(huge) > 1e100) {
            assertThat(channel.status()).isEqualTo(Status.UNREADABLE);
            assertThat(channel.statusReason()).contains("too large");
        } else {
            // one value is no state: the carrier is measured around it
            assertThat(channel.cycleCount()).isGreaterThan(35);
        }
        assertFinite(channel(1e5, samples(1_000, i -> i % 100 < 50 ? huge : -huge)));
        assertFinite(channel(1e5, samples(1_000, i -> huge)));
    }

    @ParameterizedTest
    // a swing of one code, of half a code that flickers, and of three codes, which can be told
    @CsvSource({"1, 0", "0.5, 0", "3.4, 60"})
    void aSwingBelowTwoCodesIsNoSignal(double codes, int leastCycles) {
        Random random = new Random(9);
        double step = 0.25;
        double[] volts = TestSignal.at(1e5, 0.5)
                .levels(0.11, 0.11 + codes * step)
                .noise(0, 1)
                .carrier(203.7, 1e-3, 0.3)
                .samples();
        double[] coded = Arrays.stream(volts)
                .map(it -> Math.rint((it + 0.05 * step * random.nextGaussian()) / step) * step)
                .toArray();
        // elsewhere in the recording a ramp shows what a code is
        double[] whole = Arrays.copyOf(coded, coded.length + 400);
        for (int i = 0; i < 400; i++) {
            whole[coded.length + i] = Math.rint(0.11 / step + i / 400.0 * codes) * step;
        }
        ChannelMeasurement channel = channel(1e5, whole);
        assertThat(channel.cycleCount() >= leastCycles).isTrue();
        if (leastCycles == 0) {
            assertThat(channel.status()).isNotEqualTo(Status.OK);
            assertThat(channel.cycleCount()).isZero();
        }
        assertFinite(channel);
    }

    @Test
    void gapsAreLeftOutAndNoCycleSpansThem() {
        TestSignal signal = TestSignal.at(1e5, 1).noise(0.02, 3).carrier(203.7, 1e-3, 0.3);
        double[] all = signal.samples();
        // every 97 ms some 3.3 ms are missing
        int[] kept =
                IntStream.range(0, all.length).filter(i -> i % 10_030 >= 330).toArray();
        double[] seconds = Arrays.stream(kept).mapToDouble(i -> i / 1e5).toArray();
        double[] volts = Arrays.stream(kept).mapToDouble(i -> all[i]).toArray();
        List<Segment> segments = segments(kept);
        Capture capture = Captures.ofArrays(List.of("signal1"), List.of("V"), 1e5, segments, volts);
        CaptureMeasurement measured = Measured.of(capture, Measured.plan(Role.PWM));
        ChannelMeasurement channel = measured.channels().get(0);
        assertThat(channel.eventCounts()).isEmpty();
        assertThat(channel.disturbedCount()).isZero();
        // the true period, to the sample that either end of a cycle may be off, over the root of some 180 cycles
        assertThat(Measured.statistic(channel, "period").max()).isLessThan(1 / 203.7 + 2e-5);
        assertThat(measured.fitness())
                .anyMatch(it -> it.item().equals("capture.gaps") && it.reason().contains("gaps"));
        assertThat(seconds).hasSameSizeAs(volts);
    }

    private static List<Segment> segments(int[] kept) {
        List<Segment> segments = new ArrayList<>();
        int first = 0;
        for (int i = 1; i <= kept.length; i++) {
            if (i == kept.length || kept[i] != kept[i - 1] + 1) {
                segments.add(new Segment(first, i - first, kept[first] / 1e5));
                first = i;
            }
        }
        return segments;
    }

    @Test
    void unevenStampsAreMeasuredWhereTheyAre() {
        // edges of 200 us in a straight line, seen at uneven instants: interpolation finds the 50 % instants exactly
        Random random = new Random(11);
        double period = 1 / 203.7;
        double duty = 0.3;
        double[] seconds = new double[40_000];
        double t = 0;
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = t;
            t += 20e-6 * (0.2 + 1.6 * random.nextDouble());
        }
        double[] volts = Arrays.stream(seconds)
                .map(at -> {
                    double phase = (at / period + 0.5) % 1 * period;
                    double rise = (phase - 0.25 * period) / 200e-6 + 0.5;
                    double fall = (phase - (0.25 + duty) * period) / 200e-6 + 0.5;
                    return 0.5 + 11 * (Math.clamp(rise, 0, 1) - Math.clamp(fall, 0, 1));
                })
                .toArray();
        Capture capture = Captures.ofStampedArrays(List.of("signal1"), List.of("V"), seconds, volts);
        ChannelMeasurement channel =
                Measured.of(capture, Measured.plan(Role.PWM)).channels().get(0);
        assertThat(channel.eventCounts()).isEmpty();
        assertThat(channel.cycleCount()).isBetween(155L, 165L);
        Statistic measured = Measured.statistic(channel, "period");
        // closed form; only rounding of the instants and of the straight line is left
        assertThat(measured.mean()).isCloseTo(period, within(1e-12));
        assertThat(measured.sd()).isLessThan(1e-11);
        assertThat(Measured.statistic(channel, "duty").mean()).isCloseTo(100 * duty, within(1e-8));
        assertThat(Measured.single(channel, "transition.rise").value()).isCloseTo(0.8 * 200e-6, within(1e-9));
    }

    @Test
    void aRateThatDoesNotMatchTheTimeColumnIsPoor() {
        TestSignal signal = TestSignal.at(1e5, 0.2).carrier(203.7, 1e-3, 0.3);
        Capture plain = Measured.capture(signal);
        for (double stated : new double[] {50e3, 99e3, 1e5, 1.0005e5}) {
            Capture capture = new Capture(
                    List.of(),
                    plain.channels(),
                    EvenTimeBase.of(0, 1e5, plain.sampleCount()),
                    plain.samples(),
                    Map.of(),
                    List.of(new StatedRate("line 3", stated, 0)));
            Fitness found = Measured.of(capture, Measured.plan(Role.PWM)).fitness().stream()
                    .filter(it -> it.item().equals("capture.sampleRate"))
                    .findFirst()
                    .orElseThrow();
            assertThat(found.grade()).as("%s", found).isEqualTo(stated < 1e5 ? Grade.POOR : Grade.GOOD);
            assertThat(found.reason().contains("line 3")).isEqualTo(stated < 1e5);
        }
    }

    @ParameterizedTest
    @CsvSource({"2", "3", "4", "6"})
    void aFloatingInputWithAnEdgeEveryFewSamplesIsUnreadable(double meanSamples) {
        Random random = new Random(12);
        boolean[] high = new boolean[1];
        CaptureMeasurement measured = measure(
                1e5,
                samples(
                        200_000,
                        i -> ((high[0] ^= random.nextDouble() * meanSamples < 1) ? 10 : 0)
                                + 0.1 * random.nextGaussian()));
        ChannelMeasurement channel = measured.channels().get(0);
        assertThat(channel.status()).as(channel.statusReason()).isEqualTo(Status.UNREADABLE);
        assertThat(channel.cycleCount()).isZero();
        assertThat(measured.fitness())
                .anyMatch(it -> it.item().equals("signal1.samplesPerPulse") && it.grade() == Grade.UNFIT);
    }

    @Test
    void aLongFloatingInputNeedsNoMoreMemory() throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx40m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        FloatingInput.class.getName())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isZero();
        assertThat(said.lines().toList()).endsWith("unreadable");
    }
}
