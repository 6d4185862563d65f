// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Faults that change single pulses, each looked for in the samples at the place that the scenario states. */
class PulseFaultsTest {

    private static final double SECONDS = 1e-12;
    private static final double VOLTS = 1e-9;

    @Test
    void missingPulsesAreAbsentAndTheCarrierRunsOn() {
        List<Double> rising =
                Scenes.rising(Scenes.samples(Scenes.oneSecond(new Fault.MissingPulse("signal1", 0.302, 2)), 0));
        // 199 rising edges at 5 ms to 995 ms, less those at 305 and 310 ms.
        assertThat(rising).hasSize(197);
        assertThat(rising.get(59)).isCloseTo(0.300, within(SECONDS));
        assertThat(rising.get(60)).isCloseTo(0.315, within(SECONDS));
        assertThat(rising.get(196)).isCloseTo(0.995, within(SECONDS));
    }

    @Test
    void missingPulsesOfAnActiveLowChannelLeaveItHigh() {
        Scenario scenario = Scenes.scenario(
                Scenes.recording(0, 1),
                List.of(Scenes.channel("signal2", false, 25)),
                new Fault.MissingPulse("signal2", 0.302, 1));
        double[] samples = Scenes.samples(scenario, 0);
        assertThat(Scenes.at(samples, 0.3005)).isEqualTo(Scenes.LOW_VOLTS);
        for (double t = 0.302; t < 0.3099; t += 1e-4) {
            assertThat(Scenes.at(samples, t)).isEqualTo(Scenes.HIGH_VOLTS);
        }
        assertThat(Scenes.at(samples, 0.3105)).isEqualTo(Scenes.LOW_VOLTS);
    }

    @Test
    void aRuntReachesItsShareOfTheSwingAndReturns() {
        double[] samples = Scenes.samples(Scenes.oneSecond(new Fault.Runt("signal1", 0.398, 2, 40)), 0);
        // 0.4 V + 40 % of 12 V = 5.2 V; a ramp of 40 µs gets there in 40 % of its time, 4 µs before its middle.
        assertThat(Scenes.at(samples, 0.3995)).isEqualTo(Scenes.LOW_VOLTS);
        assertThat(Scenes.at(samples, 0.40000)).isCloseTo(5.2, within(VOLTS));
        assertThat(Scenes.at(samples, 0.4010)).isCloseTo(5.2, within(VOLTS));
        assertThat(Scenes.at(samples, 0.4060)).isCloseTo(5.2, within(VOLTS));
        assertThat(Scenes.at(samples, 0.4020)).isEqualTo(Scenes.LOW_VOLTS);
        assertThat(Scenes.at(samples, 0.4110)).isEqualTo(Scenes.HIGH_VOLTS);
        assertThat(Scenes.rising(samples)).hasSize(197);
    }

    @Test
    void aBounceAddsPairsOfTransitionsRightAfterTheEdge() {
        double[] samples = Scenes.samples(Scenes.oneSecond(new Fault.Bounce("signal1", 0.398, 2, 50e-6, true)), 0);
        List<Double> rising = Scenes.rising(samples);
        assertThat(rising).hasSize(201);
        // Edge 79 is that at 0.4 s. Two distances a pair, each 50 µs ± 30 %.
        assertThat(rising.get(79)).isCloseTo(0.4, within(SECONDS));
        assertThat(rising.get(80) - rising.get(79)).isBetween(70e-6, 130e-6);
        assertThat(rising.get(81) - rising.get(80)).isBetween(70e-6, 130e-6);
        assertThat(rising.get(82)).isCloseTo(0.405, within(SECONDS));
        assertThat(Scenes.falling(samples)).anySatisfy(t -> assertThat(t).isCloseTo(0.40125, within(SECONDS)));
    }

    @Test
    void aBounceMayFollowTheEdgeOutOfTheActiveLevel() {
        double[] samples = Scenes.samples(Scenes.oneSecond(new Fault.Bounce("signal1", 0.398, 1, 50e-6, false)), 0);
        List<Double> falling = Scenes.falling(samples);
        assertThat(falling).hasSize(201);
        assertThat(falling).anySatisfy(t -> assertThat(t).isBetween(0.40125 + 70e-6, 0.40125 + 130e-6));
    }

    @Test
    void anExtraPulseStandsExactlyWhereItIsStated() {
        double[] samples = Scenes.samples(Scenes.oneSecond(new Fault.ExtraPulse("signal1", 0.4025, 100e-6, 100)), 0);
        List<Double> rising = Scenes.rising(samples);
        assertThat(rising).hasSize(200);
        assertThat(rising.get(80)).isCloseTo(0.4025, within(SECONDS));
        assertThat(Scenes.falling(samples)).anySatisfy(t -> assertThat(t).isCloseTo(0.4026, within(SECONDS)));
    }

    @Test
    void anExtraPulseInTheActiveStateGoesDown() {
        double[] samples = Scenes.samples(Scenes.oneSecond(new Fault.ExtraPulse("signal1", 0.4005, 100e-6, 70)), 0);
        // 70 % of 12 V below 12.4 V
        assertThat(Scenes.at(samples, 0.40055)).isCloseTo(4.0, within(VOLTS));
        assertThat(Scenes.at(samples, 0.40070)).isEqualTo(Scenes.HIGH_VOLTS);
    }

    @Test
    void anEdgeUnderAnExtraPulseComesOutUpsideDown() {
        double[] samples = Scenes.samples(Scenes.oneSecond(new Fault.ExtraPulse("signal1", 0.4049, 200e-6, 100)), 0);
        // The carrier rises at 0.405 s, in the middle of the spike: high, low, high.
        assertThat(Scenes.at(samples, 0.40496)).isEqualTo(Scenes.HIGH_VOLTS);
        assertThat(Scenes.at(samples, 0.40505)).isEqualTo(Scenes.LOW_VOLTS);
        assertThat(Scenes.at(samples, 0.40515)).isEqualTo(Scenes.HIGH_VOLTS);
        assertThat(Scenes.at(samples, 0.40600)).isEqualTo(Scenes.HIGH_VOLTS);
        assertThat(Scenes.at(samples, 0.40700)).isEqualTo(Scenes.LOW_VOLTS);
    }

    @Test
    void slowEdgesBeginWhereTheHealthyOnesWouldAndAreLate() {
        Fault slow = new Fault.SlowEdges(
                "signal1",
                0.3,
                0.6,
                java.util.Optional.of(new EdgeShape.Exponential(100e-6)),
                java.util.Optional.empty());
        double[] samples = Scenes.samples(Scenes.oneSecond(slow), 0);
        // Begins 20 µs before the edge's instant; 100 µs later 1 - 1/e of the 12 V.
        assertThat(Scenes.at(samples, 0.40008)).isCloseTo(0.4 + 12 * (1 - Math.exp(-1)), within(1e-6));
        assertThat(Scenes.at(samples, 0.70004)).isEqualTo(Scenes.HIGH_VOLTS);
        // Falling edges stay as they are.
        assertThat(Scenes.at(samples, 0.40127)).isCloseTo(Scenes.LOW_VOLTS, within(0.01));
    }
}
