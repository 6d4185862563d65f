// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.coverage;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.SplittableRandom;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Segment;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.InputThresholds;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.RecorderSettings;
import org.dutywright.pulse.Role;

/**
 * One capture of a corner. Drawn from the distributions that the budgets state: clock error within 50 ppm, gain and offset
 * within what is stated, the place of the first transition between two samples, the place of the levels between two codes, and
 * noise; further carrier, levels and duty.
 */
final class Trial {
    /** Half-width of the clock's error, the default of measuring. */
    static final double CLOCK_PPM = CaptureMeasurer.DEFAULT_TIME_BASE_PPM;

    private static final CaptureMeasurer MEASURER = CaptureMeasurer.withInstalled();
    private static final String NAME = "signal1";
    private static final double GAP_FROM = 0.4;
    private static final double GAP_SHARE = 0.05;

    private final Corner corner;
    private final int cycles;
    private final Random random;
    private final boolean activeHigh;
    private final double clock;
    private final double periodSeconds;
    private final double low;
    private final double swing;
    private final Wave wave;

    Trial(Corner corner, int cycles, long seed) {
        this.corner = corner;
        this.cycles = cycles;
        random = new Random(new SplittableRandom(seed).nextLong());
        activeHigh = random.nextBoolean();
        clock = CLOCK_PPM * 1e-6 * between(-1, 1);
        double step = 1 / corner.sampleRateHz();
        double drawn = 1 / between(190, 210);
        // in the recorder's time a locked carrier is a whole number of samples
        periodSeconds = corner.locked() ? Math.rint(drawn / step) * step / (1 + clock) : drawn;
        low = between(0, 1);
        swing = between(4, 12);
        wave = new Wave(corner, low, low + swing, starts(step), activeHigh);
    }

    private double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    // Starts are those of the ideal switch; the forms delay what is seen.
    private double[] starts(double step) {
        double[] starts = new double[2 * cycles + 3];
        double first = 0.2 * periodSeconds + between(0, 1) * step;
        double share = corner.duty() + between(-0.002, 0.002);
        for (int i = 0; i < starts.length; i++) {
            int cycle = i / 2;
            double duty = share + corner.movingDuty() * cycle / cycles;
            double ideal = first + (cycle + (i % 2 == 0 ? 0 : duty)) * periodSeconds;
            starts[i] = ideal + corner.jitterSeconds() * random.nextGaussian();
        }
        return starts;
    }

    /** Measures it and tells what was found and what is true. */
    Truth.Comparison run() throws IOException {
        try (Capture capture = capture();
                CaptureMeasurement measured =
                        MEASURER.measure(capture, plans(), settings(), CLOCK_PPM, Progress.NONE)) {
            ChannelMeasurement channel = measured.channels().get(0);
            return new Truth(wave, corner, low, low + swing, clock).compare(channel);
        }
    }

    private Capture capture() {
        double step = 1 / corner.sampleRateHz();
        int count = (int) (cycles * periodSeconds / step);
        double[] values = wave.sample(0, step / (1 + clock), count);
        double gain = 1 + corner.gainShare() * between(-1, 1);
        double offset = corner.offsetVolts() * between(-1, 1);
        double code = 1.4 * swing / (1L << corner.bits());
        double codeOffset = code * between(-0.5, 0.5);
        double fresh = Math.sqrt(1 - corner.noiseKeep() * corner.noiseKeep());
        double noise = random.nextGaussian();
        for (int i = 0; i < count; i++) {
            double read = gain * values[i] + offset + corner.noiseShare() * swing * noise;
            values[i] = codeOffset + code * Math.rint((read - codeOffset) / code);
            noise = corner.noiseKeep() * noise + fresh * random.nextGaussian();
        }
        if (!corner.gap()) {
            return Captures.ofArrays(List.of(NAME), List.of("V"), 0, corner.sampleRateHz(), values);
        }
        int before = (int) (GAP_FROM * count);
        int missing = (int) (GAP_SHARE * count);
        int after = count - before - missing;
        double[] kept = new double[before + after];
        System.arraycopy(values, 0, kept, 0, before);
        System.arraycopy(values, before + missing, kept, before, after);
        List<Segment> segments =
                List.of(new Segment(0, before, 0), new Segment(before, after, (before + missing) * step));
        return Captures.ofArrays(List.of(NAME), List.of("V"), corner.sampleRateHz(), segments, kept);
    }

    private Map<String, ChannelPlan> plans() {
        return Map.of(
                NAME,
                new ChannelPlan(
                        Optional.of(Role.PWM),
                        Optional.of(activeHigh ? ActiveLevel.HIGH : ActiveLevel.LOW),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        Optional.of(new InputThresholds(
                                low + corner.inputShare(true) * swing, low + corner.inputShare(false) * swing))));
    }

    private PulseSettings settings() {
        return PulseSettings.defaults()
                .with(RecorderSettings.GAIN_ERROR, 100 * corner.gainShare())
                .with(RecorderSettings.OFFSET_ERROR, corner.offsetVolts());
    }
}
