// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Faults that hold for a while, each looked for in the samples at the place that the scenario states. */
class SpanFaultsTest {

    private static final double SECONDS = 1e-12;
    private static final double VOLTS = 1e-9;

    private static double phase(double seconds) {
        double periods = seconds / Scenes.PERIOD_SECONDS;
        return periods - Math.rint(periods);
    }

    @Test
    void anOpenPathGoesToTheRailAndThePhaseIsKept() {
        double[] samples = Scenes.samples(Scenes.oneSecond(new Fault.SignalOpen("signal1", 0.303, 0.348, 12.0)), 0);
        for (double t = 0.3031; t < 0.348; t += 1e-3) {
            assertThat(Scenes.at(samples, t)).isEqualTo(12.0);
        }
        assertThat(Scenes.at(samples, 0.349)).isEqualTo(Scenes.LOW_VOLTS);
        assertThat(Scenes.rising(samples).stream().filter(t -> t > 0.35 - 1e-9))
                .hasSize(130)
                .allSatisfy(t -> assertThat(phase(t)).isCloseTo(0, within(1e-9)));
    }

    @Test
    void aLossOfSupplyBreaksThePhaseAndWaitsForTheRestart() {
        Fault loss = new Fault.SupplyLoss("signal1", 0.303, 0.320, 0.0315, 12.4, OptionalDouble.empty(), true);
        double[] samples = Scenes.samples(Scenes.oneSecond(loss), 0);
        for (double t = 0.3031; t < 0.3515; t += 1e-3) {
            assertThat(Scenes.at(samples, t)).isEqualTo(Scenes.HIGH_VOLTS);
        }
        // The first active edge falls into the high rail; the pulse ends 25 % of 5 ms after 0.3515 s.
        assertThat(Scenes.falling(samples)).anySatisfy(t -> assertThat(t).isCloseTo(0.35275, within(SECONDS)));
        // 1.5 ms after a multiple of 5 ms: 30 % of a period.
        assertThat(Scenes.rising(samples).stream().filter(t -> t > 0.352))
                .hasSize(129)
                .allSatisfy(t -> assertThat(phase(t)).isCloseTo(0.3, within(1e-9)));
    }

    @Test
    void aLossOfSupplyMakesNoGlitchAtTheRestartAndAllowsOneOddPeriod() {
        Scenario scenario = Scenes.scenario(
                Scenes.recording(0, 1),
                List.of(Scenes.withNoise(Scenes.channel("signal2", false, 25), 8e-6, 0)),
                new Fault.SupplyLoss("signal2", 0.303, 0.320, 0.0315, 12.4, OptionalDouble.of(0.0066), true));
        double[] samples = Scenes.samples(scenario, 0);
        List<Double> falling = Scenes.falling(samples);
        int first = (int) falling.stream().filter(t -> t < 0.303).count();
        // The restart is exact; later edges jitter by at most 4.5 · 8 µs / √2 = 25.5 µs.
        assertThat(falling.get(first)).isCloseTo(0.3515, within(SECONDS));
        assertThat(falling.get(first + 1)).isCloseTo(0.3581, within(26e-6));
        assertThat(falling.get(first + 2)).isCloseTo(0.3631, within(26e-6));
        for (double t = 0.3031; t < 0.35147; t += 1e-5) {
            assertThat(Scenes.at(samples, t)).isEqualTo(Scenes.HIGH_VOLTS);
        }
    }

    @Test
    void aRecordedSupplyShowsThatItWasLost() {
        Scenario base = Scenes.oneSecond(
                new Fault.SupplyLoss("signal1", 0.303, 0.320, 0.03, 12.4, OptionalDouble.empty(), true),
                new Fault.SupplyLoss("signal1", 0.703, 0.720, 0.03, 12.4, OptionalDouble.empty(), false));
        Scenario scenario = withSupply(base);
        double[] supply = Scenes.samples(scenario, 1);
        assertThat(Scenes.at(supply, 0.30)).isEqualTo(12.5);
        assertThat(Scenes.at(supply, 0.31)).isEqualTo(0);
        assertThat(Scenes.at(supply, 0.32)).isEqualTo(12.5);
        assertThat(Scenes.at(supply, 0.71)).as("only the ground was lost").isEqualTo(12.5);
    }

    private static Scenario withSupply(Scenario s) {
        return new Scenario(
                s.id(),
                s.title(),
                s.note(),
                s.sensor(),
                s.seed(),
                s.recording(),
                Optional.of(new Supply(12.5, Optional.of("supply"), 0)),
                s.travel(),
                s.channels(),
                s.faults(),
                s.knownPosition(),
                s.expectation());
    }

    @Test
    void aLiftedGroundLiftsTheLowLevelOnly() {
        double[] samples = Scenes.samples(Scenes.oneSecond(new Fault.GroundLift("signal1", 0.3, 0.6, 1.5, false)), 0);
        assertThat(Scenes.at(samples, 0.254)).isEqualTo(Scenes.LOW_VOLTS);
        assertThat(Scenes.at(samples, 0.404)).isCloseTo(1.9, within(VOLTS));
        assertThat(Scenes.at(samples, 0.401)).isEqualTo(Scenes.HIGH_VOLTS);
        assertThat(Scenes.at(samples, 0.604)).isEqualTo(Scenes.LOW_VOLTS);
        double[] both = Scenes.samples(Scenes.oneSecond(new Fault.GroundLift("signal1", 0, 1, 1.5, true)), 0);
        assertThat(Scenes.at(both, 0.404)).isCloseTo(1.9, within(VOLTS));
        assertThat(Scenes.at(both, 0.401)).isCloseTo(13.9, within(VOLTS));
    }

    @Test
    void levelsShiftWhereStatedEvenInTheMiddleOfAState() {
        double[] samples = Scenes.samples(Scenes.oneSecond(new Fault.LevelShift("signal1", 0.3005, 0.6, 0.3, -2)), 0);
        assertThat(Scenes.at(samples, 0.3004)).isEqualTo(Scenes.HIGH_VOLTS);
        assertThat(Scenes.at(samples, 0.3006)).isCloseTo(10.4, within(VOLTS));
        assertThat(Scenes.at(samples, 0.3040)).isCloseTo(0.7, within(VOLTS));
    }

    @Test
    void aWrongFrequencyHoldsForItsSpanWithoutAJumpOfPhase() {
        List<Double> rising =
                Scenes.rising(Scenes.samples(Scenes.oneSecond(new Fault.Frequency("signal1", 0.3, 0.5, 0.8)), 0));
        // 160 Hz: 32 cycles of 6.25 ms from the cycle that starts at 0.3 s to 0.5 s, then 5 ms again.
        assertThat(rising.get(59)).isCloseTo(0.3, within(SECONDS));
        assertThat(rising.get(60)).isCloseTo(0.30625, within(SECONDS));
        assertThat(rising.get(91)).isCloseTo(0.5, within(SECONDS));
        assertThat(rising.get(92)).isCloseTo(0.505, within(SECONDS));
    }

    @Test
    void aWrongRatioChangesTheDuty() {
        double[] samples = Scenes.samples(Scenes.oneSecond(new Fault.Ratio("signal1", 0.3, 0.5, 1.2, 5)), 0);
        // 1.2 · 25 % + 5 % = 35 %
        assertThat(Scenes.falling(samples)).anySatisfy(t -> assertThat(t).isCloseTo(0.40175, within(SECONDS)));
        assertThat(Scenes.falling(samples)).anySatisfy(t -> assertThat(t).isCloseTo(0.60125, within(SECONDS)));
    }

    @Test
    void aWornSpotChangesTheDutyAtItsTravelEachTime() {
        ChannelModel channel =
                Scenes.withCarrier(Scenes.channel("signal1", true, 0), 200, 0, new DutyLaw.EndPoints(10, 50));
        Profile travel =
                new Profile(List.of(new Profile.Point(0, 0), new Profile.Point(0.5, 100), new Profile.Point(1, 0)));
        Scenario scenario = Scenes.scenario(
                1, Scenes.recording(0, 1), travel, List.of(channel), new Fault.DutyJump("signal1", 0, 1, 40, 4, -6));
        double[] samples = Scenes.samples(scenario, 0);
        // Travel 40 % at 0.2 s and at 0.8 s: duty 26 % - 6 %. At 0.25 s and travel 50 %: 30 %.
        for (double expected : new double[] {0.2 + 0.2 * 0.005, 0.8 + 0.2 * 0.005, 0.25 + 0.3 * 0.005}) {
            assertThat(Scenes.falling(samples)).anySatisfy(t -> assertThat(t).isCloseTo(expected, within(SECONDS)));
        }
    }

    @Test
    void aStuckLevelHoldsToItsEnd() {
        double[] high = Scenes.samples(Scenes.oneSecond(new Fault.Stuck("signal1", 0.7, 1, true, 12.4)), 0);
        assertThat(Scenes.rising(high)).last().satisfies(t -> assertThat(t).isLessThan(0.7001));
        assertThat(Scenes.at(high, 0.999)).isEqualTo(12.4);
        double[] low = Scenes.samples(Scenes.oneSecond(new Fault.Stuck("signal1", 0, 1, false, 0.1)), 0);
        assertThat(low).containsOnly(0.1);
    }

    @Test
    void aNoiseBurstAddsNoiseForItsSpanOnly() {
        double[] samples = Scenes.samples(
                Scenes.scenario(
                        Scenes.recording(0, 1),
                        List.of(Scenes.channel("signal1", true, 0)),
                        new Fault.NoiseBurst("signal1", 0.3, 0.5, 0.4)),
                0);
        double sum = 0;
        for (int i = 30_000; i < 50_000; i++) {
            sum += (samples[i] - 0.4) * (samples[i] - 0.4);
        }
        // 20,000 samples: standard error 0.5 %; 4 of them are allowed.
        assertThat(Math.sqrt(sum / 20_000)).isCloseTo(0.4, within(0.008));
        assertThat(samples[29_999]).isEqualTo(0.4);
        assertThat(samples[50_000]).isEqualTo(0.4);
    }
}
