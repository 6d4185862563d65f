// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class HealthySignalTest {

    // Linear interpolation on a linear edge is exact up to rounding: 1e-16 of 12 V over a slope of 0.3 V/µs, and the
    // rounding of instants near 1 s.
    private static final double SECONDS = 1e-12;
    private static final double VOLTS = 1e-9;

    @Test
    void samplesOfARampLieOnTheLine() {
        double[] samples = Scenes.samples(Scenes.oneSecond(), 0);
        // Rising edge at 5 ms, 40 µs long: closed form 0.4 V + 12 V · (0.5 + (t - 5 ms) / 40 µs)
        assertThat(Scenes.at(samples, 0.00497)).isCloseTo(0.4, within(VOLTS));
        assertThat(Scenes.at(samples, 0.00499)).isCloseTo(0.4 + 12 * 0.25, within(VOLTS));
        assertThat(Scenes.at(samples, 0.00500)).isCloseTo(0.4 + 12 * 0.5, within(VOLTS));
        assertThat(Scenes.at(samples, 0.00501)).isCloseTo(0.4 + 12 * 0.75, within(VOLTS));
        assertThat(Scenes.at(samples, 0.00503)).isCloseTo(12.4, within(VOLTS));
    }

    @Test
    void samplesOfAnExponentialEdgeLieOnTheCurve() {
        ChannelModel channel = Scenes.withEdges(
                Scenes.channel("signal1", true, 25),
                new EdgeShape.Exponential(20e-6),
                new EdgeShape.Exponential(20e-6));
        double[] samples = Scenes.samples(Scenes.scenario(Scenes.recording(0, 0.1), List.of(channel)), 0);
        // The 50 % point lies at 5 ms: 12.4 V - 12 V · 0.5 · exp(-(t - 5 ms) / 20 µs)
        assertThat(Scenes.at(samples, 0.00500)).isCloseTo(6.4, within(VOLTS));
        assertThat(Scenes.at(samples, 0.00502)).isCloseTo(12.4 - 6 * Math.exp(-1), within(VOLTS));
        assertThat(Scenes.at(samples, 0.00506)).isCloseTo(12.4 - 6 * Math.exp(-3), within(VOLTS));
    }

    @Test
    void edgesStandWhereFrequencyPhaseAndDutyPutThem() {
        ChannelModel channel = Scenes.withCarrier(
                Scenes.channel("signal1", true, 0), 198.7, 30, new DutyLaw.OverTime(Profile.constant(37)));
        double[] samples = Scenes.samples(Scenes.scenario(Scenes.recording(0, 1), List.of(channel)), 0);
        List<Double> rising = Scenes.rising(samples);
        List<Double> falling = Scenes.falling(samples);
        // By hand: 30 % of a period has passed at 0 s, so cycle k starts at (k - 0.3) / 198.7 Hz; its pulse ends
        // 37 % later. 0.7 / 198.7 Hz is the first start inside, 0.07 / 198.7 Hz the first end.
        assertThat(rising).hasSize(198);
        for (int k = 0; k < rising.size(); k++) {
            assertThat(rising.get(k)).isCloseTo((k + 0.7) / 198.7, within(SECONDS));
        }
        for (int k = 0; k < falling.size(); k++) {
            assertThat(falling.get(k)).isCloseTo((k + 0.07) / 198.7, within(SECONDS));
        }
    }

    @Test
    void theDutyFollowsTheTravelAtTheStartOfEachCycle() {
        ChannelModel channel =
                Scenes.withCarrier(Scenes.channel("signal2", false, 0), 200, 0, new DutyLaw.EndPoints(20, 90));
        Profile travel = new Profile(List.of(new Profile.Point(0.2, 0), new Profile.Point(0.7, 100)));
        Scenario scenario = Scenes.scenario(1, Scenes.recording(0, 1), travel, List.of(channel));
        double[] samples = Scenes.samples(scenario, 0);
        // Active low: a cycle starts with a falling edge. Cycle 60 starts at 0.3 s, travel 20 %, duty 34 %; so it
        // ends its pulse at 0.3 s + 0.34 · 5 ms.
        assertThat(Scenes.falling(samples)).anySatisfy(t -> assertThat(t).isCloseTo(0.3, within(SECONDS)));
        assertThat(Scenes.rising(samples)).anySatisfy(t -> assertThat(t).isCloseTo(0.3017, within(SECONDS)));
        // Cycle 160 starts at 0.8 s, pressed: 90 %.
        assertThat(Scenes.rising(samples)).anySatisfy(t -> assertThat(t).isCloseTo(0.8045, within(SECONDS)));
        assertThat(Scenes.at(samples, 0.802)).isCloseTo(Scenes.LOW_VOLTS, within(VOLTS));
    }

    @Test
    void aRecordingMayStartBeforeZero() {
        Scenario scenario = Scenes.scenario(Scenes.recording(-0.5, 1), List.of(Scenes.channel("signal1", true, 25)));
        double[] samples = Scenes.samples(scenario, 0);
        // A cycle starts with the recording at -0.5 s: a rising edge stands at each multiple of 5 ms.
        assertThat(samples).hasSize(100_000);
        assertThat(samples[0]).isCloseTo(6.4, within(VOLTS));
        assertThat(Scenes.rising(samples).get(0)).isCloseTo(0.005, within(SECONDS));
    }

    @Test
    void aDutyOfNothingOrAllHasNoEdge() {
        for (double duty : new double[] {0, 100}) {
            Scenario scenario =
                    Scenes.scenario(Scenes.recording(0, 0.1), List.of(Scenes.channel("signal1", true, duty)));
            assertThat(Scenes.samples(scenario, 0)).containsOnly(duty == 0 ? Scenes.LOW_VOLTS : Scenes.HIGH_VOLTS);
        }
    }

    @Test
    void jitterHasTheStatedStandardDeviationOfThePeriod() {
        ChannelModel channel = Scenes.withNoise(Scenes.channel("signal1", true, 25), 5e-6, 0);
        List<Double> rising =
                Scenes.rising(Scenes.samples(Scenes.scenario(Scenes.recording(0, 50), List.of(channel)), 0));
        double sum = 0;
        double previousSum = 0;
        double previous = 0;
        for (int i = 1; i < rising.size(); i++) {
            double off = rising.get(i) - rising.get(i - 1) - Scenes.PERIOD_SECONDS;
            sum += off * off;
            previousSum += off * previous;
            previous = off;
        }
        int periods = rising.size() - 1;
        // 10,000 periods: the relative standard error of a standard deviation is about 1 %; 4 of them are allowed.
        assertThat(Math.sqrt(sum / periods)).isCloseTo(5e-6, within(0.2e-6));
        // White edges: successive periods have the correlation -0.5 (closed form); standard error 1 %.
        assertThat(previousSum / sum).isCloseTo(-0.5, within(0.05));
    }

    @Test
    void noiseHasTheStatedRmsAndStepsAreKept() {
        ChannelModel channel = Scenes.withNoise(Scenes.channel("signal1", true, 0), 0, 0.03);
        double[] samples = Scenes.samples(Scenes.scenario(Scenes.recording(0, 1), List.of(channel)), 0);
        double sum = 0;
        for (double volts : samples) {
            sum += (volts - 0.4) * (volts - 0.4);
        }
        // 100,000 samples: standard error 0.22 % of 30 mV; 4 of them are allowed.
        assertThat(Math.sqrt(sum / samples.length)).isCloseTo(0.03, within(0.0003));
    }
}
