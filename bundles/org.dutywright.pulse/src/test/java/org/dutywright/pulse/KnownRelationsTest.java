// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ListIterator;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Relations that hold whatever the signal: how the jitter of edges shows in periods, and what an averaging meter settles on.
 */
class KnownRelationsTest {
    private static final double EDGE_SECONDS = 5e-6;
    private static final int CYCLES = 20_000;
    private static ChannelMeasurement jittered;

    /** Edges that scatter independently around a steady clock, on ramps with samples enough to place them exactly. */
    @BeforeAll
    static void measure() {
        TestSignal signal =
                TestSignal.at(100e3, (CYCLES + 1) / 200.0).ramp(200e-6).carrier(200, 1e-3, 0.4);
        Random random = new Random(20_251);
        ListIterator<TestSignal.Piece> pieces = signal.pieces().listIterator();
        while (pieces.hasNext()) {
            TestSignal.Piece piece = pieces.next();
            pieces.set(new TestSignal.Piece(
                    piece.riseSeconds() + EDGE_SECONDS * random.nextGaussian(),
                    piece.fallSeconds() + EDGE_SECONDS * random.nextGaussian(),
                    1));
        }
        jittered = Measured.pwm(signal);
        assertThat(jittered.cycleCount()).isGreaterThanOrEqualTo(CYCLES - 1);
        assertThat(jittered.disturbedCount()).isZero();
    }

    private static double relativeTo(String id) {
        return Measured.single(jittered, id).value() / EDGE_SECONDS;
    }

    // A standard deviation of n normal values scatters by 1 / sqrt(2 n) of itself; those of neighbouring periods depend
    // on
    // each other, which makes it up to sqrt(1 + 2 r^2) more: 1.22 for r = -1/2, 1.39 for the changes (r = -2/3, 1/6).
    // Four
    // times this are allowed.
    @Test
    void the_period_jitter_of_white_edge_noise_is_the_root_of_two_of_it() {
        assertThat(relativeTo("period-jitter.rms")).isCloseTo(Math.sqrt(2), within(4 * 1.22 * Math.sqrt(2) / 200));
    }

    @Test
    void the_cycle_to_cycle_jitter_of_white_edge_noise_is_the_root_of_six_of_it() {
        assertThat(relativeTo("cycle-jitter.rms")).isCloseTo(Math.sqrt(6), within(4 * 1.39 * Math.sqrt(6) / 200));
    }

    // The autocorrelation of n values scatters by less than 1 / sqrt(n); four times this are allowed.
    @Test
    void the_autocorrelation_of_neighbouring_periods_is_minus_a_half() {
        assertThat(Measured.single(jittered, "period-jitter.lag-1").value())
                .isCloseTo(-0.5, within(4 / Math.sqrt(CYCLES)));
    }

    @Test
    void the_largest_change_is_that_of_the_cycles_and_the_range_that_of_the_periods() {
        double largest = 0;
        double last = Double.NaN;
        double shortest = Double.POSITIVE_INFINITY;
        double longest = 0;
        for (Cycle cycle : Measured.cycles(jittered)) {
            double change = Math.abs(cycle.periodSeconds() - last);
            largest = change > largest ? change : largest;
            last = cycle.periodSeconds();
            shortest = Math.min(shortest, last);
            longest = Math.max(longest, last);
        }
        assertThat(Measured.single(jittered, "cycle-jitter.most").value()).isEqualTo(largest);
        assertThat(Measured.single(jittered, "period-jitter.peak-to-peak").value())
                .isEqualTo(longest - shortest);
    }

    // V_L + D (V_H - V_L), edges equal and straight: V_L 0.1 V, V_H 4.9 V give 0.580, 2.260 and 4.420 V (closed form)
    @ParameterizedTest
    @CsvSource({"0.10, 0.580, 0", "0.45, 2.260, 0", "0.90, 4.420, 0", "0.45, 2.260, 0.05", "0.90, 4.420, 0.02"})
    void an_averaging_meter_and_the_mean_agree_within_the_uncertainty(double duty, double volts, double noise) {
        TestSignal signal = TestSignal.at(200e3, 2)
                .ramp(40e-6)
                .levels(0.1, 4.9)
                .noise(noise, 17)
                .quantised(5.0 / 4096)
                .carrier(199.7, 1e-3, duty);
        Uncertain mean = Measured.single(Measured.pwm(signal), "mean-voltage");
        assertThat(mean.value()).isCloseTo(volts, within(3 * mean.u()));
        assertThat(mean.u()).isLessThan(5e-3);
    }
}
