// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Scenarios for tests: 200 Hz, 0.4 V and 12.4 V, no noise, no jitter, unless said otherwise. */
final class Scenes {

    static final double RATE_HZ = 100_000;
    static final double PERIOD_SECONDS = 0.005;
    static final double LOW_VOLTS = 0.4;
    static final double HIGH_VOLTS = 12.4;

    private Scenes() {}

    /** A channel with a constant duty and ramps of 40 µs, a new cycle starting with the recording. */
    static ChannelModel channel(String name, boolean activeHigh, double dutyPercent) {
        return new ChannelModel(
                name,
                activeHigh,
                1 / PERIOD_SECONDS,
                0,
                new DutyLaw.OverTime(Profile.constant(dutyPercent)),
                LOW_VOLTS,
                HIGH_VOLTS,
                new EdgeShape.Ramp(40e-6),
                new EdgeShape.Ramp(40e-6),
                0,
                0);
    }

    /** The same channel with other edges. */
    static ChannelModel withEdges(ChannelModel c, EdgeShape rise, EdgeShape fall) {
        return new ChannelModel(
                c.name(),
                c.activeHigh(),
                c.carrierHz(),
                c.phasePercent(),
                c.duty(),
                c.lowVolts(),
                c.highVolts(),
                rise,
                fall,
                c.jitterSeconds(),
                c.noiseVolts());
    }

    /** The same channel with jitter and noise. */
    static ChannelModel withNoise(ChannelModel c, double jitterSeconds, double noiseVolts) {
        return new ChannelModel(
                c.name(),
                c.activeHigh(),
                c.carrierHz(),
                c.phasePercent(),
                c.duty(),
                c.lowVolts(),
                c.highVolts(),
                c.rise(),
                c.fall(),
                jitterSeconds,
                noiseVolts);
    }

    /** The same channel with another carrier, phase and duty. */
    static ChannelModel withCarrier(ChannelModel c, double hertz, double phasePercent, DutyLaw duty) {
        return new ChannelModel(
                c.name(),
                c.activeHigh(),
                hertz,
                phasePercent,
                duty,
                c.lowVolts(),
                c.highVolts(),
                c.rise(),
                c.fall(),
                c.jitterSeconds(),
                c.noiseVolts());
    }

    static Recording recording(double startSeconds, double durationSeconds) {
        return new Recording(
                RATE_HZ, startSeconds, durationSeconds, Optional.empty(), List.of(), Recording.Format.standard());
    }

    static Scenario scenario(Recording recording, List<ChannelModel> channels, Fault... faults) {
        return scenario(1, recording, Profile.constant(0), channels, faults);
    }

    static Scenario scenario(
            long seed, Recording recording, Profile travel, List<ChannelModel> channels, Fault... faults) {
        return new Scenario(
                "scene",
                "Scene of a test",
                "",
                "twin-pedal-200",
                seed,
                recording,
                Optional.empty(),
                travel,
                channels,
                List.of(faults),
                Optional.empty(),
                Optional.empty());
    }

    /** One second of one active-high channel of 25 % duty with faults. */
    static Scenario oneSecond(Fault... faults) {
        return scenario(recording(0, 1), List.of(channel("signal1", true, 25)), faults);
    }

    /** All samples of one channel. */
    static double[] samples(Scenario scenario, int channel) {
        try (org.dutywright.capture.Samples samples = Simulator.samples(scenario)) {
            double[] values = new double[Math.toIntExact(samples.sampleCount())];
            samples.read(channel, 0, values, 0, values.length);
            return values;
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** The value of a channel at an instant that falls on a sample. */
    static double at(double[] samples, double seconds) {
        return samples[(int) Math.round(seconds * RATE_HZ)];
    }

    /** Where the samples cross a level, by linear interpolation. */
    record Crossing(double seconds, boolean rising) {}

    /** All crossings of the middle between the two levels. */
    static List<Crossing> crossings(double[] samples) {
        double level = (LOW_VOLTS + HIGH_VOLTS) / 2;
        List<Crossing> found = new ArrayList<>();
        for (int i = 1; i < samples.length; i++) {
            boolean before = samples[i - 1] >= level;
            boolean after = samples[i] >= level;
            if (before != after) {
                double share = (level - samples[i - 1]) / (samples[i] - samples[i - 1]);
                found.add(new Crossing((i - 1 + share) / RATE_HZ, after));
            }
        }
        return found;
    }

    /** Instants of the rising crossings. */
    static List<Double> rising(double[] samples) {
        return crossings(samples).stream()
                .filter(Crossing::rising)
                .map(Crossing::seconds)
                .toList();
    }

    /** Instants of the falling crossings. */
    static List<Double> falling(double[] samples) {
        return crossings(samples).stream()
                .filter(crossing -> !crossing.rising())
                .map(Crossing::seconds)
                .toList();
    }
}
