// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Random;
import java.util.TreeMap;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Segment;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.TestSignal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EdgeFinderTest {
    private static final PulseSettings SETTINGS = PulseSettings.defaults();

    /** Keeps all pulses, and how many of them each segment has. */
    private static final class Kept implements PulseSink {
        final List<Pulse> pulses = new ArrayList<>();
        final List<Excursion> excursions = new ArrayList<>();

        @Override
        public void pulse(Pulse pulse) {
            pulses.add(pulse);
        }

        @Override
        public void excursion(Excursion excursion) {
            excursions.add(excursion);
        }
    }

    private static Kept find(Capture capture, int capacity, LevelTrack track) throws IOException {
        Kept kept = new Kept();
        new EdgeFinder(track, SETTINGS, kept).run(ChannelBlocks.of(capture, 0, capacity, Progress.NONE));
        return kept;
    }

    private static Kept find(Capture capture, int capacity, Thresholds levels) throws IOException {
        Kept kept = new Kept();
        new EdgeFinder(LevelTrack.constant(levels, SETTINGS), SETTINGS, kept)
                .run(ChannelBlocks.of(capture, 0, capacity, Progress.NONE));
        return kept;
    }

    /** A carrier with jitter, moving duty, random edges, noise and codes, all from one seed. */
    private static double[] randomSignal(Random random) {
        double noise = random.nextDouble() * 0.05 * 11;
        double ramp = random.nextInt(3) == 0 ? 0 : random.nextDouble() * 400e-6;
        TestSignal signal = TestSignal.at(100e3, 0.15)
                .levels(0.5, 11.5)
                .ramp(ramp)
                .noise(noise, random.nextLong())
                .quantised(random.nextBoolean() ? 0.05 + random.nextDouble() * 0.1 : 0);
        double t = random.nextDouble() * 5e-3;
        while (t < 0.15) {
            double period = 5e-3 * (1 + 0.05 * random.nextGaussian());
            double duty = 0.12 + 0.76 * random.nextDouble();
            signal.pieces().add(new TestSignal.Piece(t, t + duty * period, 1));
            t += period;
        }
        return signal.samples();
    }

    private static Thresholds thresholds(double noise) {
        return Thresholds.of(0.5, 11.5, noise, noise, SETTINGS);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void agrees_with_the_oracle_on_random_signals_with_gaps(long seed) throws IOException {
        Random random = new Random(seed);
        double[] values = randomSignal(random);
        int first = 2000 + random.nextInt(3000);
        int second = 8000 + random.nextInt(3000);
        List<Segment> segments = List.of(
                new Segment(0, first, -0.25),
                new Segment(first, second - first, 0.5),
                new Segment(second, values.length - second, 3));
        Capture capture = Captures.ofArrays(List.of("a"), List.of("V"), 100e3, segments, values);
        Thresholds levels = thresholds(0.3);

        Kept kept = find(capture, 1 + random.nextInt(300), levels);

        double[] seconds = new double[values.length];
        for (Segment segment : segments) {
            for (int i = 0; i < segment.sampleCount(); i++) {
                seconds[(int) segment.firstSample() + i] = segment.startSeconds() + 0.25 + i / 100e3;
            }
        }
        EdgeOracle oracle = new EdgeOracle(values, seconds, levels);
        List<EdgeOracle.Found> expected = new ArrayList<>();
        for (Segment segment : segments) {
            expected.addAll(oracle.segment((int) segment.firstSample(), (int) segment.endSample()));
        }
        assertSame(kept.pulses, expected, oracle);
    }

    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33, 34, 35, 36})
    void agrees_with_the_oracle_on_uneven_time_stamps(long seed) throws IOException {
        Random random = new Random(seed);
        double[] values = randomSignal(random);
        double[] seconds = new double[values.length];
        for (int i = 1; i < values.length; i++) {
            seconds[i] = seconds[i - 1] + 10e-6 * (0.2 + 1.6 * random.nextDouble());
        }
        Capture capture = Captures.ofStampedArrays(List.of("a"), List.of("V"), seconds, values);
        Thresholds levels = thresholds(0.3);

        Kept kept = find(capture, 1 + random.nextInt(300), levels);

        EdgeOracle oracle = new EdgeOracle(values, seconds, levels);
        assertSame(kept.pulses, oracle.segment(0, values.length), oracle);
    }

    // Both levels drift and step, each in its own way; edges are timed at the tracked levels by finder and oracle.
    @ParameterizedTest
    @ValueSource(longs = {41, 42, 43, 44, 45, 46, 47, 48})
    void agrees_with_the_oracle_where_levels_move(long seed) throws IOException {
        Random random = new Random(seed);
        double[] values = randomSignal(random);
        double drift = 5 * random.nextDouble();
        double step = 4 * random.nextDouble() - 2;
        int from = 3000 + random.nextInt(8000);
        double[] seconds = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            seconds[i] = i / 100e3;
            values[i] += drift * i / values.length + (i > from ? step : 0);
        }
        Capture capture = Captures.ofArrays(List.of("a"), List.of("V"), 0, 100e3, values);
        ChannelSource source = new ChannelSource(capture, 0, Progress.NONE);
        SampleSurvey survey = SampleSurvey.of(source.open(), new Windows(values.length));
        try (LevelTrack track =
                new LevelFinder(source, survey, SETTINGS).find().orElseThrow().track()) {
            assertThat(track.moves()).isTrue();

            Kept kept = find(capture, 1 + random.nextInt(300), track);

            NavigableMap<Long, Thresholds> holds = new TreeMap<>();
            LevelTrack.Walk walk = track.walk();
            holds.put(0L, walk.now());
            while (walk.nextSample() < values.length) {
                long at = walk.nextSample();
                walk.advance();
                holds.put(at, walk.now());
            }
            EdgeOracle oracle = new EdgeOracle(
                    values, seconds, i -> holds.floorEntry((long) i).getValue());
            assertSame(kept.pulses, oracle.segment(0, values.length), oracle);
        }
    }

    private static void assertSame(List<Pulse> pulses, List<EdgeOracle.Found> expected, EdgeOracle oracle) {
        List<Pulse> withEdge = pulses.stream().filter(it -> it.startsWithEdge).toList();
        assertThat(withEdge).hasSameSizeAs(expected);
        int complete = 0;
        for (int i = 0; i < expected.size(); i++) {
            Pulse pulse = withEdge.get(i);
            EdgeOracle.Found found = expected.get(i);
            assertThat(pulse.high).isEqualTo(found.rising());
            if (!found.complete() || Double.isNaN(pulse.edgeSeconds)) {
                // no duration is told either where a pulse lies off its level because that steps within it
                continue;
            }
            complete++;
            // both interpolate the same two samples; instants of seconds have 2e-16 of rounding, and a fit, whose
            // normal
            // equations are solved in two ways, loses up to four digits of the edge's some hundred microseconds
            assertThat(pulse.fitSamples).isEqualTo(found.fitted());
            assertThat(pulse.startSeconds).isCloseTo(found.seconds(), within(found.fitted() > 0 ? 1e-11 : 1e-13));
            assertThat(pulse.edgeSeconds).isCloseTo(found.durationSeconds(), within(1e-13));
            assertThat(pulse.edgeSamples).isEqualTo(found.samples());
            boolean endIsSingle = i + 1 < expected.size() && expected.get(i + 1).crossings() == 1 && pulse.endsWithEdge;
            boolean neitherFitted = found.fitted() == 0
                    && i + 1 < expected.size()
                    && expected.get(i + 1).fitted() == 0;
            if (found.crossings() == 1 && endIsSingle && neitherFitted) {
                // sums of some hundred samples of up to 12 V times 10 us
                assertThat(pulse.area).isCloseTo(oracle.integral(pulse.startSeconds, pulse.endSeconds), within(1e-13));
            }
        }
        assertThat(complete).isGreaterThan(expected.size() * 9 / 10);
    }

    @Test
    void finds_the_same_wherever_the_block_borders_lie() throws IOException {
        double[] values = randomSignal(new Random(77));
        Capture capture = Captures.ofArrays(List.of("a"), List.of("V"), 0, 100e3, values);
        Kept whole = find(capture, values.length, thresholds(0.3));
        for (int capacity : new int[] {1, 2, 3, 5, 7, 64, 499, 500, 501}) {
            Kept parts = find(capture, capacity, thresholds(0.3));
            assertThat(parts.pulses).hasSameSizeAs(whole.pulses);
            for (int i = 0; i < whole.pulses.size(); i++) {
                Pulse one = whole.pulses.get(i);
                Pulse other = parts.pulses.get(i);
                assertThat(other.startSeconds).isEqualTo(one.startSeconds);
                assertThat(other.endSeconds).isEqualTo(one.endSeconds);
                assertThat(other.plateauSamples).isEqualTo(one.plateauSamples);
                assertThat(other.extreme).isEqualTo(one.extreme);
                // only the order of additions differs
                assertThat(other.area).isCloseTo(one.area, within(1e-14));
                assertThat(other.samples).isEqualTo(one.samples);
            }
            assertThat(parts.excursions).isEqualTo(whole.excursions);
        }
    }

    @Test
    void a_signal_upside_down_has_the_same_instants() throws IOException {
        double[] values = randomSignal(new Random(5));
        double[] turned = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            turned[i] = 12 - values[i];
        }
        Kept up = find(Captures.ofArrays(List.of("a"), List.of("V"), 0, 100e3, values), 1000, thresholds(0.3));
        Kept down = find(Captures.ofArrays(List.of("a"), List.of("V"), 0, 100e3, turned), 1000, thresholds(0.3));
        assertThat(down.pulses).hasSameSizeAs(up.pulses);
        for (int i = 0; i < up.pulses.size(); i++) {
            assertThat(down.pulses.get(i).high).isNotEqualTo(up.pulses.get(i).high);
            // 12 - value rounds in the last digit of volts
            assertThat(down.pulses.get(i).startSeconds).isCloseTo(up.pulses.get(i).startSeconds, within(1e-15));
        }
    }

    @Test
    void a_single_pole_edge_takes_ln_9_times_tau() throws IOException {
        // 10 to 90 % of a single pole: ln 9 tau = 2.197225 tau (closed form); 50 % after ln 2 tau
        double tau = 50e-6;
        double[] values = new double[20_000];
        for (int i = 0; i < values.length; i++) {
            double t = i / 10e6 - 0.5e-3;
            values[i] = t < 0 ? 0 : 1 - Math.exp(-t / tau);
        }
        Capture capture = Captures.ofArrays(List.of("a"), List.of("V"), 0, 10e6, values);
        Kept kept = find(capture, 4096, Thresholds.of(0, 1, 0, 0, SETTINGS));
        Pulse pulse = kept.pulses.get(1);
        // straight lines between samples 0.1 us apart miss the curve by up to (dt / tau)^2 / 8 = 5e-7 of the swing
        assertThat(pulse.edgeSeconds).isCloseTo(Math.log(9) * tau, within(1e-5 * tau));
        // the instant comes from a fit, which leaves 0.00016 durations of an exponential
        assertThat(pulse.startSeconds).isCloseTo(0.5e-3 + Math.log(2) * tau, within(0.00016 * 2.197225 * tau));
    }

    @Test
    void noise_on_a_slow_edge_makes_one_edge_in_the_middle() throws IOException {
        // 5 % noise on a ramp of 2,000 samples: many crossings, of which the middle is right on average
        double sum = 0;
        int runs = 40;
        for (int run = 0; run < runs; run++) {
            TestSignal signal =
                    TestSignal.at(1e6, 0.01).levels(0, 10).ramp(2e-3).noise(0.5, 100 + run);
            signal.pieces().add(new TestSignal.Piece(5e-3, 1, 1));
            Capture capture = Captures.ofArrays(List.of("a"), List.of("V"), 0, 1e6, signal.samples());
            Kept kept = find(capture, 1000, Thresholds.of(0, 10, 0.5, 0.5, SETTINGS));
            assertThat(kept.pulses).hasSize(2);
            assertThat(kept.excursions).isEmpty();
            sum += kept.pulses.get(1).startSeconds - 5e-3;
        }
        // one instant scatters by less than noise / slope = 100 us; the mean of 40 by 16 us, here within 3 of those
        assertThat(sum / runs).isCloseTo(0, within(48e-6));
    }
}
