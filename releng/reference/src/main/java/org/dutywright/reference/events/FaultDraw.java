// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.dutywright.pulse.EventKind;
import org.dutywright.reference.events.Injection.Expected;
import org.dutywright.simulation.EdgeShape;
import org.dutywright.simulation.Fault;

/**
 * Draws one fault for one bench. A fault is only drawn where the public definition of its event holds beyond doubt: large
 * against the noise, and long against the samples. Where a bench cannot have it so, there is none.
 */
final class FaultDraw {
    /** Carrier cycles are placed by instants a little before or after an edge, beyond its jitter. */
    private static final double BESIDE = 0.03;

    /** Standard uncertainties that an event needs. */
    private static final double SIGMAS = 6;

    /** Independent samples from which on a pulse tells its level and its noise. */
    private static final int LEAST_SAMPLES = 8;

    /** Cycles that a level shift lasts at most. */
    private static final int LONGEST_SHIFT = 20;

    private final Bench bench;
    private final double noiseShare;
    private final Random random;
    private final int cycle;
    private final String channel;
    private final double period;
    private final double start;
    private final double duty;
    private final double step;
    private final double edge;

    /**
     * A draw.
     *
     * @param cycle of the first channel, in which the fault begins
     */
    FaultDraw(Bench bench, double noiseShare, int cycle, Random random) {
        this.bench = bench;
        this.noiseShare = noiseShare;
        this.random = random;
        this.cycle = cycle;
        channel = bench.channel().name();
        period = bench.channel().periodSeconds();
        start = bench.cycleSeconds(cycle);
        duty = bench.dutyShare(cycle);
        step = bench.stepSeconds();
        edge = Math.max(
                bench.channel().rise().settledSeconds() / (bench.channel().rise() instanceof EdgeShape.Ramp ? 1 : 8),
                bench.channel().fall().settledSeconds() / (bench.channel().fall() instanceof EdgeShape.Ramp ? 1 : 8));
    }

    private double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    /** How far a sample must be off a state to be outside it, as a share of the swing. */
    private double leave() {
        return Math.max(0.1, SIGMAS * noiseShare);
    }

    /** Pulses that are absent while the carrier runs on: one or two are missing, more are a dropout. */
    Optional<Injection> absent(int pulses) {
        Fault fault = new Fault.MissingPulse(channel, start - BESIDE * period, pulses);
        if (pulses > 2) {
            double last = bench.cycleSeconds(cycle - 1) + bench.dutyShare(cycle - 1) * period;
            return Optional.of(Injection.of(fault, EventKind.DROPOUT, last, start + pulses * period));
        }
        List<Expected> expected = new ArrayList<>();
        for (int i = 0; i < pulses; i++) {
            expected.add(new Expected(EventKind.MISSING_PULSE, start + i * period, start + i * period));
        }
        return Optional.of(new Injection(fault, expected));
    }

    /** An open signal path: some level for at least four pulses. */
    Optional<Injection> open() {
        double from = start + between(0, 1) * period;
        double to = from + between(5, 12) * period;
        double volts = random.nextBoolean()
                ? bench.channel().lowVolts()
                : bench.channel().highVolts();
        return Optional.of(Injection.of(new Fault.SignalOpen(channel, from, to, volts), EventKind.DROPOUT, from, to));
    }

    /** A pulse that is too low: it lies clearly outside of both states. */
    Optional<Injection> lowPulse() {
        double reach = reach();
        double flat = duty * period - edge;
        if (flat < 3 * step) {
            return Optional.empty();
        }
        Fault fault = new Fault.Runt(channel, start - BESIDE * period, 1, 100 * reach);
        return Optional.of(Injection.of(fault, EventKind.RUNT, start, start));
    }

    private double reach() {
        double least = Math.min(0.47, leave() + 3 * noiseShare + 0.05);
        return between(least, 1 - least);
    }

    /** A spike in the longer state, as high as a runt or whole. */
    Optional<Injection> spike(boolean whole) {
        double longer = Math.max(duty, 1 - duty);
        double width = 4 * step + 2 * edge + between(0, 0.1) * period;
        // the signal must be seen in its state before and after, beyond the aberration of an edge
        double beside = Math.max(0.06 * period, 3 * step) + edge;
        double room = longer * period - width - 2 * beside;
        if (room <= 0) {
            return Optional.empty();
        }
        double at = start + (duty < 0.5 ? duty * period : 0) + beside + between(0, 1) * room;
        Fault fault = new Fault.ExtraPulse(channel, at, width, whole ? 100 : 100 * reach());
        return Optional.of(Injection.of(fault, whole ? EventKind.EXTRA_PULSE : EventKind.RUNT, at, at));
    }

    /** Further transitions within 5 % of a period after an edge. */
    Optional<Injection> bounce() {
        int pairs = 1 + random.nextInt(3);
        double longest = 0.95 * 0.05 * period / (2 * pairs) / 1.3;
        double shortest = (2.2 * step + 1.5 * edge) / 0.7;
        boolean afterActive = random.nextBoolean();
        double state = (afterActive ? duty : 1 - duty) * period;
        if (shortest > longest || state < 0.08 * period) {
            return Optional.empty();
        }
        double at = afterActive ? start : start + duty * period;
        Fault fault = new Fault.Bounce(channel, at - BESIDE * period, pairs, between(shortest, longest), afterActive);
        return Optional.of(Injection.of(fault, EventKind.BOUNCE, at, at));
    }

    /** One whole cycle that is too long or too short. */
    Optional<Injection> oddPeriod() {
        // six times the uncertainty of a period, two edges, at most a step an edge
        double least = Math.max(0.08, 1.2 * SIGMAS * step / Math.sqrt(3) / period * Math.sqrt(2));
        // a shorter cycle has a shorter pulse, and from 0.7 of a period on doubt about its edges may make it an extra
        // pulse
        boolean longer = random.nextBoolean() || least > 0.3 || Math.min(duty, 1 - duty) * period < 8 * step + 4 * edge;
        double off = between(least, longer ? 0.4 : 0.3);
        double factor = 1 / (longer ? 1 + off : 1 - off);
        Fault fault = new Fault.Frequency(channel, start - BESIDE * period, start + BESIDE * period, factor);
        return Optional.of(Injection.of(fault, EventKind.PERIOD_EXCURSION, start, start + period / factor));
    }

    /** A duty that jumps on this channel alone and back after so many cycles. */
    Optional<Injection> dutyJump(int cycles) {
        // six times the uncertainty of the difference of two duties, three edges each, at most a step an edge
        double least = Math.max(0.08, 1.2 * SIGMAS * step / Math.sqrt(3) / period * Math.sqrt(2 * 1.5));
        double most = 0.95 * Math.max(duty, 1 - duty) - 0.05 - edge / period;
        if (most <= least) {
            return Optional.empty();
        }
        double points = 100 * between(least, Math.min(most, 0.4)) * (duty > 0.5 ? -1 : 1);
        double to = start + (cycles - 1 + BESIDE) * period;
        Fault fault = new Fault.Ratio(channel, start - BESIDE * period, to, 1, points);
        List<Expected> expected = new ArrayList<>();
        expected.add(new Expected(EventKind.DUTY_JUMP, start, start));
        if (cycles > 1) {
            double back = start + cycles * period;
            expected.add(new Expected(EventKind.DUTY_JUMP, back, back));
        }
        return Optional.of(new Injection(fault, expected));
    }

    /** One edge that takes longer than its limit, by so much that neither noise nor the samples leave a doubt. */
    Optional<Injection> slowEdge() {
        double limit = bench.slowEdgeSeconds();
        double certain = Math.min(1 - 2 * leave(), 0.8 * (1 - SIGMAS * Math.sqrt(2) * noiseShare / 0.8));
        // noise makes an edge look shorter: the last way out of a state and the first way into the other one count
        // and of few samples only the time from the first to the last is certain
        double least = ((1.15 + 6 * noiseShare) * limit + 2 * step) / certain + step;
        boolean active = random.nextBoolean();
        double most = 0.75 * (active ? duty : 1 - duty) * period;
        if (most <= least) {
            return Optional.empty();
        }
        double at = active ? start : start + duty * period;
        boolean rising = active == bench.channel().activeHigh();
        Optional<EdgeShape> slow = Optional.of(new EdgeShape.Ramp(between(least, Math.min(most, 3 * least))));
        double begin = at - bench.channel().edgeInto(rising).leadSeconds();
        Fault fault = new Fault.SlowEdges(
                channel,
                begin - 0.02 * period,
                begin + 0.02 * period,
                rising ? slow : Optional.empty(),
                rising ? Optional.empty() : slow);
        return Optional.of(Injection.of(fault, EventKind.SLOW_EDGE, at, at));
    }

    // The duty moves: what is long enough to tell its level now may be too short some cycles later.
    private double shortestShare(int cycles) {
        return IntStream.rangeClosed(cycle - 1, cycle + cycles)
                .mapToDouble(bench::dutyShare)
                .map(share -> Math.min(share, 1 - share))
                .min()
                .orElseThrow();
    }

    /** One level, or both, that moves for some cycles. */
    Optional<Injection> levelShift() {
        // the level is that outside of both transitions and their aberrations
        double shortest = shortestShare(LONGEST_SHIFT + 1) * period - 8 * edge;
        // neighbouring samples may be alike: as few as a quarter of them then count
        double samples = Math.floor(shortest / step) / 4;
        // six times the uncertainty of a pulse's level make the event, four more that noise does not hide a pulse of it
        double least = Math.max(0.08, (SIGMAS + 4) * noiseShare / Math.sqrt(samples));
        if (samples < LEAST_SAMPLES || least > 0.25) {
            return Optional.empty();
        }
        double volts = between(least, 0.3) * bench.channel().swingVolts() * (random.nextBoolean() ? 1 : -1);
        int which = random.nextInt(3);
        double from = start + between(0, 1) * period;
        double to = from + between(8, LONGEST_SHIFT) * period;
        Fault fault = new Fault.LevelShift(channel, from, to, which == 0 ? 0 : volts, which == 1 ? 0 : volts);
        return Optional.of(Injection.of(fault, EventKind.LEVEL_SHIFT, from, to));
    }

    /** Stands at a level to the end of the recording. */
    Optional<Injection> stuck(boolean high) {
        double from = start + between(0, 1) * period;
        double volts = high ? bench.channel().highVolts() : bench.channel().lowVolts();
        return Optional.of(Injection.of(
                new Fault.Stuck(channel, from, bench.durationSeconds() + period, high, volts),
                high ? EventKind.STUCK_HIGH : EventKind.STUCK_LOW,
                from,
                bench.durationSeconds()));
    }
}
