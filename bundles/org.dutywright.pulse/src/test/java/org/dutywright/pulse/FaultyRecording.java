// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.dutywright.pulse.TestSignal.Piece;

/**
 * A recording drawn from a seed: rate, carrier, duty, edges, noise, codes, active level, and five faults of random kinds at
 * places far apart, written down as truth.
 */
final class FaultyRecording {
    /** What must be found: so many events of a kind that start and end in a span, give or take a cycle. */
    record Truth(EventKind kind, double fromSeconds, double toSeconds, int count) {}

    private static final int[] PLACES = {20, 45, 70, 95, 120};
    private static final int CYCLES = 150;
    private static final double SWING = 11;

    final List<Truth> truth = new ArrayList<>();
    final double sampleRateHz;
    final double periodSeconds;
    final ActiveLevel active;

    private final Random random;
    private final double duty;
    private final double ramp;
    private final double noise;
    private final TestSignal signal;
    private final Piece[] pulses;
    private final boolean[] gone;
    private final List<Piece> added = new ArrayList<>();
    private final List<Double> slowEdges = new ArrayList<>();
    private final List<double[]> shifts = new ArrayList<>();

    FaultyRecording(long seed) {
        // neighbouring seeds give alike first numbers
        random = new Random(seed * 7919 * 104_729);
        sampleRateHz = new double[] {20e3, 50e3, 100e3, 200e3}[random.nextInt(4)];
        double carrierHz = 180 + 40 * random.nextDouble();
        periodSeconds = 1 / carrierHz;
        duty = 0.14 + 0.72 * random.nextDouble();
        ramp = random.nextBoolean() ? 0 : random.nextDouble() * 100e-6;
        noise = random.nextInt(4) == 0 ? 0 : random.nextDouble() * 0.02;
        active = random.nextBoolean() ? ActiveLevel.HIGH : ActiveLevel.LOW;
        double first = periodSeconds * random.nextDouble();
        signal = TestSignal.at(sampleRateHz, first + CYCLES * periodSeconds)
                .noise(noise * SWING, seed)
                .quantised(random.nextBoolean() ? 0 : 0.05)
                .carrier(carrierHz, first, duty);
        pulses = signal.pieces().toArray(new Piece[0]);
        gone = new boolean[pulses.length];
        for (int place : PLACES) {
            fault(place);
        }
    }

    private void fault(int k) {
        double rise = pulses[k].riseSeconds();
        double fall = pulses[k].fallSeconds();
        switch (random.nextInt(10)) {
            case 0 -> missing(k, 1 + random.nextInt(2));
            case 1 -> dropout(k, 3 + random.nextInt(8));
            case 2 -> lowPulse(k, random.nextBoolean() ? 0.3 + 0.1 * random.nextDouble() : 0.65);
            case 3 -> inside(EventKind.RUNT, rise, fall, 0.02 * periodSeconds + 3 / sampleRateHz, 0.35);
            case 4 -> bounce(random.nextBoolean() ? rise : fall);
            case 5 ->
                inside(EventKind.EXTRA_PULSE, rise, fall, 0.03 * periodSeconds + 4 / sampleRateHz + 1.5 * ramp, 1);
            case 6 -> excursion(k);
            case 7 -> {
                double change = (duty > 0.5 ? -1 : 1) * (0.08 + 0.2 * random.nextDouble());
                pulses[k] = new Piece(rise, fall + change * periodSeconds, 1);
                truth.add(new Truth(EventKind.DUTY_JUMP, rise, rise + periodSeconds, 1));
            }
            case 8 -> {
                double edge = random.nextBoolean() ? rise : fall;
                slowEdges.add(edge);
                truth.add(new Truth(EventKind.SLOW_EDGE, edge, edge, 1));
            }
            default -> shift(rise);
        }
    }

    private void missing(int k, int count) {
        Arrays.fill(gone, k, k + count, true);
        double due = pulses[k].riseSeconds();
        truth.add(new Truth(EventKind.MISSING_PULSE, due, due + (count - 1) * periodSeconds, count));
    }

    private void dropout(int k, int count) {
        Arrays.fill(gone, k, k + count, true);
        truth.add(new Truth(EventKind.DROPOUT, pulses[k - 1].fallSeconds(), pulses[k + count].riseSeconds(), 1));
    }

    private void lowPulse(int k, double height) {
        pulses[k] = new Piece(pulses[k].riseSeconds(), pulses[k].fallSeconds(), height);
        truth.add(new Truth(EventKind.RUNT, pulses[k].riseSeconds(), pulses[k].fallSeconds(), 1));
    }

    /** Something in the middle of the longer state, away from it and back. */
    private void inside(EventKind kind, double rise, double fall, double width, double height) {
        boolean low = duty < 0.5;
        double length = Math.max(duty, 1 - duty);
        double at = (low ? fall : rise) + (0.1 + (length - 0.25) * random.nextDouble()) * periodSeconds;
        added.add(new Piece(at, at + width, low ? height : -height));
        truth.add(new Truth(kind, at, at + width, 1));
    }

    private void bounce(double edge) {
        double width = Math.max(2.2 / sampleRateHz, 1.3 * ramp + 2 / sampleRateHz);
        if (3 * width < 0.05 * periodSeconds) {
            boolean rising = Arrays.stream(pulses).anyMatch(it -> it.riseSeconds() == edge);
            added.add(new Piece(edge + width, edge + 2 * width, rising ? -1 : 1));
            truth.add(new Truth(EventKind.BOUNCE, edge + width, edge + 2 * width, 1));
        }
    }

    private void excursion(int k) {
        double late = (0.08 + 0.3 * random.nextDouble()) * periodSeconds;
        for (int i = k + 1; i < pulses.length; i++) {
            Piece pulse = pulses[i];
            pulses[i] = new Piece(pulse.riseSeconds() + late, pulse.fallSeconds() + late, pulse.height());
        }
        double rise = pulses[k].riseSeconds();
        truth.add(new Truth(EventKind.PERIOD_EXCURSION, rise, rise + periodSeconds + late, 1));
    }

    // Near 10 % a shifted level lies on a reference level, where noise makes edges look slow; those are left out here.
    private void shift(double rise) {
        double volts = (random.nextBoolean() ? 1 : -1) * (0.16 + 0.1 * random.nextDouble()) * SWING;
        boolean low = random.nextBoolean();
        double from = rise - 0.15 * periodSeconds;
        shifts.add(new double[] {from, from + 8 * periodSeconds, low ? volts : 0, low ? 0 : volts});
        truth.add(new Truth(EventKind.LEVEL_SHIFT, from, from + 8 * periodSeconds, 1));
    }

    private double shiftAt(double t, int state) {
        return shifts.stream()
                .filter(it -> t >= it[0] && t < it[1])
                .mapToDouble(it -> it[state])
                .sum();
    }

    /** The samples; for an active low channel turned upside down. */
    double[] samples() {
        signal.pieces().clear();
        for (int i = 0; i < pulses.length; i++) {
            if (!gone[i]) {
                signal.pieces().add(pulses[i]);
            }
        }
        signal.pieces().addAll(added);
        // long enough to be slow beyond the noise of its own duration
        double slow = 0.16 * (1 + 10 * noise) * periodSeconds;
        signal.ramps(edge -> slowEdges.contains(edge) ? slow : ramp);
        signal.shifts(t -> shiftAt(t, 2), t -> shiftAt(t, 3));
        double[] samples = signal.samples();
        if (active == ActiveLevel.LOW) {
            for (int i = 0; i < samples.length; i++) {
                samples[i] = 12 - samples[i];
            }
        }
        return samples;
    }
}
