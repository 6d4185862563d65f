// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.special.Erf;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.PulseSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The instant of a transition with many samples, against the formula of its shape. */
class EdgeFitTest {
    private static final double AT = 3e-3;

    /** The pulses that one transition from 0 to 1 (or back) ends and begins. */
    private static final class Two implements PulseSink {
        Pulse after;
        int pulses;

        @Override
        public void pulse(Pulse pulse) {
            after = pulse;
            pulses++;
        }
    }

    private static Pulse edge(DoubleUnaryOperator shape, double rate, double noise, boolean rising, Random random)
            throws IOException {
        double[] values = new double[(int) (6e-3 * rate)];
        for (int i = 0; i < values.length; i++) {
            double value = shape.applyAsDouble(i / rate - AT) + noise * random.nextGaussian();
            values[i] = rising ? value : 1 - value;
        }
        Two two = new Two();
        Thresholds levels = Thresholds.of(0, 1, noise, noise, PulseSettings.defaults());
        new EdgeFinder(LevelTrack.constant(levels, PulseSettings.defaults()), PulseSettings.defaults(), two)
                .run(ChannelBlocks.of(
                        Captures.ofArrays(List.of("a"), List.of("V"), 0, rate, values), 0, 777, Progress.NONE));
        assertThat(two.pulses).isEqualTo(2);
        assertThat(two.after.high).isEqualTo(rising);
        return two.after;
    }

    private static double ramp(double t) {
        return Math.clamp(0.5 + t / 500e-6, 0, 1);
    }

    private static double pole(double t) {
        return t < 0 ? 0 : 1 - Math.exp(-t / 100e-6);
    }

    private static double gaussian(double t) {
        return (1 + Erf.erf(t / 100e-6 / Math.sqrt(2))) / 2;
    }

    @Test
    void a_ramp_has_its_instant_in_the_middle() throws IOException {
        Pulse pulse = edge(EdgeFitTest::ramp, 1e6, 0, true, new Random(1));
        // 10 to 90 % of 500 us is 400 us, of which the middle half is fitted
        assertThat(pulse.fitSamples).isBetween(200, 201);
        // a parabola holds a straight line exactly
        assertThat(pulse.startSeconds).isCloseTo(AT, within(1e-14));
    }

    @ParameterizedTest
    @ValueSource(doubles = {60e3, 100e3, 1e6, 30e6})
    void a_single_pole_has_its_instant_after_ln_2_time_constants(double rate) throws IOException {
        Pulse pulse = edge(EdgeFitTest::pole, rate, 0, true, new Random(1));
        assertThat(pulse.fitSamples).isPositive();
        // the bounds that the fit states, of 2.197225 tau
        double bound = pulse.fitSamples > 10 ? 0.00016 : 0.0006;
        assertThat(pulse.startSeconds).isCloseTo(AT + 0.693147 * 100e-6, within(bound * 219.7225e-6));
        assertThat(pulse.edgeSeconds).isCloseTo(219.7225e-6, within(rate < 1e6 ? 1.5e-6 : 1e-8));
    }

    @Test
    void a_gaussian_edge_has_its_instant_in_the_middle() throws IOException {
        Pulse pulse = edge(EdgeFitTest::gaussian, 1e6, 0, true, new Random(1));
        // it is odd around its middle, so a symmetrical window leaves nothing
        assertThat(pulse.startSeconds).isCloseTo(AT, within(1e-10));
        // 10 to 90 % of a Gaussian edge: 2.563103 sigma (closed form)
        // straight lines between samples miss the curve by (dt / sigma)^2 / 8 of the swing, 3e-9 s at its slope there
        assertThat(pulse.edgeSeconds).isCloseTo(256.3103e-6, within(3e-9));
    }

    @Test
    void a_transition_of_few_samples_is_interpolated() throws IOException {
        Pulse pulse = edge(EdgeFitTest::ramp, 25e3, 0, true, new Random(1));
        assertThat(pulse.edgeSamples).isBetween(9, 11);
        assertThat(pulse.fitSamples).isZero();
        assertThat(pulse.startSeconds).isCloseTo(AT, within(1e-14));
    }

    @Test
    void more_samples_than_are_kept_are_averaged() throws IOException {
        Pulse pulse = edge(EdgeFitTest::pole, 100e6, 0, true, new Random(1));
        // half of 2.197225 tau at 100 MS/s
        assertThat(pulse.fitSamples).isCloseTo(10_986, within(64));
        assertThat(pulse.startSeconds).isCloseTo(AT + 0.693147 * 100e-6, within(0.00016 * 219.7225e-6));
    }

    // 5 % noise; on the 10 % of the period that an edge may take (500 us of 5 ms) and on shorter ones
    @ParameterizedTest
    @CsvSource({
        "ramp, 1e6, true", "ramp, 1e6, false", "ramp, 100e3, true", "ramp, 100e3, false", "ramp, 25e3, true",
        "ramp, 25e3, false", "pole, 1e6, true", "pole, 1e6, false", "pole, 100e3, true", "pole, 100e3, false",
        "gaussian, 1e6, true", "gaussian, 100e3, false"
    })
    void noise_moves_the_instant_to_neither_side(String shape, double rate, boolean rising) throws IOException {
        Random random = new Random(4711);
        DoubleUnaryOperator edge = switch (shape) {
            case "ramp" -> EdgeFitTest::ramp;
            case "pole" -> EdgeFitTest::pole;
            default -> EdgeFitTest::gaussian;
        };
        double truth = AT + (shape.equals("pole") ? Math.log(2) * 100e-6 : 0);
        int edges = 1500;
        double sum = 0;
        double squares = 0;
        double expected = 0;
        for (int k = 0; k < edges; k++) {
            // the place of the edge between the samples is drawn as well
            double shift = random.nextDouble() / rate;
            Pulse pulse = edge(t -> edge.applyAsDouble(t - shift), rate, 0.05, rising, random);
            double error = pulse.startSeconds - truth - shift;
            sum += error;
            squares += error * error;
            double slope = shape.equals("ramp") ? 1 / 500e-6 : shape.equals("pole") ? 0.5 / 100e-6 : 0.398942 / 100e-6;
            double gain = pulse.fitSamples > 0 ? 2.25 / pulse.fitSamples : 1;
            expected += gain * (0.05 / slope) * (0.05 / slope) / edges;
        }
        double sd = Math.sqrt(squares / edges);
        // the mean of that many independent errors is within 4 of its standard errors of 0
        assertThat(Math.abs(sum / edges)).isLessThan(4 * sd / Math.sqrt(edges));
        // and each scatters no more than is said of it: 1.5 / sqrt(n) of one sample's error, 10 % for what the window
        // does
        assertThat(sd).isLessThan(1.1 * Math.sqrt(expected));
    }
}
