// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.Role;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.DutyLaw;
import org.dutywright.simulation.EdgeShape;
import org.dutywright.simulation.Fault;
import org.dutywright.simulation.Profile;
import org.dutywright.simulation.Quantisation;
import org.dutywright.simulation.Recording;
import org.dutywright.simulation.Scenario;

/**
 * A sensor and a recorder drawn from a seed: two channels with carriers of their own, or one; end points of the duty between 5 and
 * 95 %, either active level, linear or exponential edges, jitter, 8 to 12 bits, 10 to 200 kS/s, at least five samples in
 * the shortest pulse. The travel rests and moves, with strokes of 80 ms from end to end and back. Some recordings have gaps.
 */
final class Bench {
    private static final double[] RATES = {10e3, 20e3, 25e3, 50e3, 100e3, 200e3};
    private static final double STROKE_SECONDS = 0.08;
    private static final double LEAST_SAMPLES = 5;

    /** Of a channel alone, a stroke must stay below the limit of a duty jump: 58 points in 14 cycles are 4.1 a cycle. */
    private static final double MOST_POINTS_ALONE = 58;

    private static final double MOST_POINTS = 90;

    /** From 0 to 100 %, as a share of the period: a longer edge may be a slow one. */
    private static final double LONGEST_EDGE = 0.09;

    /** A sensor's own limit for its transitions, against the longest one from 10 to 90 % that it has. */
    private static final double TRANSITION_LIMIT = 1.3;

    private final Random random;
    private final long seed;
    private final double carrierHz;
    private final double sampleRateHz;
    private final double durationSeconds;
    private final List<ChannelModel> channels = new ArrayList<>();
    private final Map<String, ChannelPlan> plans = new LinkedHashMap<>();
    private final Quantisation converter;
    private final List<Recording.Pause> pauses = new ArrayList<>();
    private final Profile travel;

    /**
     * Draws.
     *
     * @param channelCount one or two
     * @param cycles length of the recording
     * @param moves whether the travel moves
     * @param gaps whether the recording may have gaps
     */
    Bench(long seed, int channelCount, int cycles, boolean moves, boolean gaps) {
        this.seed = seed;
        // neighbouring seeds give alike first numbers
        random = new Random(seed * 7919 * 104_729);
        carrierHz = channelCount > 1 || random.nextBoolean() ? between(180, 220) : between(450, 550);
        sampleRateHz = RATES[random.nextInt(RATES.length)];
        durationSeconds = cycles / carrierHz;
        for (int i = 0; i < channelCount; i++) {
            addChannel("signal" + (i + 1), channelCount > 1 ? MOST_POINTS : MOST_POINTS_ALONE);
        }
        int bits = 8 + 2 * random.nextInt(3);
        converter = Quantisation.ofBits(bits, -2, 18);
        if (gaps) {
            addGaps();
        }
        travel = moves ? movement() : Profile.constant(between(0, 100));
    }

    private void addGaps() {
        double at = durationSeconds * between(0.1, 0.6);
        while (random.nextInt(3) == 0 && at < durationSeconds) {
            pauses.add(new Recording.Pause(at, at + between(0.001, 0.3)));
            at += between(0.5, 2);
        }
    }

    private double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    private void addChannel(String name, double mostPoints) {
        double least = Math.max(5, 100 * LEAST_SAMPLES * carrierHz * 1.1 / sampleRateHz);
        double released = between(least, 95 - (95 - least) / 2);
        double pressed = Math.min(100 - least, released + between(10, mostPoints));
        boolean high = random.nextBoolean();
        double own = carrierHz * between(0.98, 1.02);
        double low = between(0, 1.2);
        double swing = random.nextBoolean() ? between(4.5, 5) : between(10, 13);
        double shortest = Math.min(released, 100 - pressed) / 100 / own;
        EdgeShape rise = edge(shortest, own);
        EdgeShape fall = edge(shortest, own);
        channels.add(new ChannelModel(
                name,
                high,
                own,
                between(0, 100),
                new DutyLaw.EndPoints(released, pressed),
                low,
                low + swing,
                rise,
                fall,
                random.nextInt(3) == 0 ? 0 : between(0, 0.002) / own,
                0));
        plans.put(
                name,
                new ChannelPlan(
                        Optional.of(Role.PWM),
                        Optional.of(high ? ActiveLevel.HIGH : ActiveLevel.LOW),
                        Optional.of(new ChannelPlan.Travel(released, pressed)),
                        random.nextBoolean()
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(
                                        TRANSITION_LIMIT * Math.max(tenToNinety(rise), tenToNinety(fall)))));
    }

    /** An edge that is over before half of the shortest pulse. */
    private EdgeShape edge(double shortestSeconds, double hertz) {
        double most = Math.min(0.5 * shortestSeconds, LONGEST_EDGE / hertz);
        double seconds = most * Math.pow(random.nextDouble(), 2);
        return random.nextInt(3) == 0 ? new EdgeShape.Exponential(seconds / 5) : new EdgeShape.Ramp(seconds);
    }

    static double tenToNinety(EdgeShape edge) {
        return switch (edge) {
            case EdgeShape.Ramp ramp -> 0.8 * ramp.durationSeconds();
            case EdgeShape.Exponential pole -> Math.log(9) * pole.timeConstantSeconds();
        };
    }

    /** Rests, slow movements and fast strokes in turn. */
    private Profile movement() {
        List<Profile.Point> points = new ArrayList<>();
        double at = between(0, 0.3);
        double place = 0;
        points.add(new Profile.Point(0, place));
        while (at < durationSeconds) {
            points.add(new Profile.Point(at, place));
            boolean stroke = random.nextInt(3) > 0;
            double next = stroke ? (place > 50 ? 0 : 100) : between(0, 100);
            at += stroke ? STROKE_SECONDS * Math.abs(next - place) / 100 : between(0.15, 1);
            place = next;
            points.add(new Profile.Point(at, place));
            at += random.nextInt(3) == 0 ? 0 : between(0, 0.5);
        }
        return new Profile(points);
    }

    /** The scenario with faults, without noise and converter. */
    Scenario scenario(List<Fault> faults) {
        return new Scenario(
                "bench-" + seed,
                "drawn",
                "",
                "drawn",
                seed,
                new Recording(sampleRateHz, 0, durationSeconds, Optional.empty(), pauses, Recording.Format.standard()),
                Optional.empty(),
                travel,
                channels,
                faults,
                Optional.empty(),
                Optional.empty());
    }

    /** Records it. */
    Recorder recorder(NoiseKind noise, double noiseShare) {
        return new Recorder(noise, noiseShare, converter, seed);
    }

    /** What is known of the channels. */
    Map<String, ChannelPlan> plans() {
        return plans;
    }

    /** The first channel, the one that faults are put into. */
    ChannelModel channel() {
        return channels.get(0);
    }

    /** Longest transition from 10 to 90 % that its plan, or without one the default, allows. */
    double slowEdgeSeconds() {
        return plans.get(channel().name())
                .transitionMaxSeconds()
                .orElse(0.1 * channel().periodSeconds());
    }

    /** Instant of the 50 % point of the edge into the active level that begins a cycle of the first channel, but for jitter. */
    double cycleSeconds(int cycle) {
        return (cycle - channel().phasePercent() / 100) * channel().periodSeconds();
    }

    /** Share of a cycle of the first channel that is spent in the active level. */
    double dutyShare(int cycle) {
        double start = cycleSeconds(cycle);
        return channel().duty().dutyPercent(start, travel.at(start)) / 100;
    }

    double stepSeconds() {
        return 1 / sampleRateHz;
    }

    double durationSeconds() {
        return durationSeconds;
    }
}
