// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/**
 * A waveform in closed form: trapezoids between two levels, with known 50 % instants. Pulses are placed first, then moved,
 * left out, added or lowered; noise and quantisation come last.
 */
public final class TestSignal {
    /** A pulse above the low level: 50 % instants of its edges and its height as a share of the swing. */
    public record Piece(double riseSeconds, double fallSeconds, double height) {}

    private final double sampleRateHz;
    private final int count;
    private double startSeconds;
    private double low = 0.5;
    private double high = 11.5;
    private double rampSeconds;
    private double noise;
    private double step;
    private long seed = 1;
    private final List<Piece> pieces = new ArrayList<>();
    private DoubleUnaryOperator lowShift = t -> 0;
    private DoubleUnaryOperator highShift = t -> 0;
    private DoubleUnaryOperator ramp;

    private TestSignal(double sampleRateHz, double durationSeconds) {
        this.sampleRateHz = sampleRateHz;
        count = (int) Math.round(sampleRateHz * durationSeconds);
    }

    /** Nothing yet: the low level all the time. */
    public static TestSignal at(double sampleRateHz, double durationSeconds) {
        return new TestSignal(sampleRateHz, durationSeconds);
    }

    /** Pulses from {@code firstSeconds} to the end, at a fixed carrier, of a duty that depends on time. */
    public TestSignal carrier(double hertz, double firstSeconds, DoubleUnaryOperator dutyShare) {
        double period = 1 / hertz;
        for (int k = 0; firstSeconds + k * period < count / sampleRateHz; k++) {
            double rise = firstSeconds + k * period;
            pieces.add(new Piece(rise, rise + dutyShare.applyAsDouble(rise) * period, 1));
        }
        return this;
    }

    /** Pulses of a fixed duty. */
    public TestSignal carrier(double hertz, double firstSeconds, double dutyShare) {
        return carrier(hertz, firstSeconds, t -> dutyShare);
    }

    /** The pulses placed so far, to change. */
    public List<Piece> pieces() {
        return pieces;
    }

    public TestSignal levels(double lowVolts, double highVolts) {
        low = lowVolts;
        high = highVolts;
        return this;
    }

    /** Levels that move by so many volts. */
    public TestSignal shifts(DoubleUnaryOperator lowVolts, DoubleUnaryOperator highVolts) {
        lowShift = lowVolts;
        highShift = highVolts;
        return this;
    }

    /** Linear edges of so long from 0 to 100 %. */
    public TestSignal ramp(double seconds) {
        rampSeconds = seconds;
        return this;
    }

    /** Linear edges whose length depends on the instant of the edge. */
    public TestSignal ramps(DoubleUnaryOperator secondsAtEdge) {
        ramp = secondsAtEdge;
        return this;
    }

    /** Normal noise, independent from sample to sample. */
    public TestSignal noise(double volts, long randomSeed) {
        noise = volts;
        seed = randomSeed;
        return this;
    }

    /** Rounds to whole steps. */
    public TestSignal quantised(double volts) {
        step = volts;
        return this;
    }

    /** Instant of the first sample, to which the instants of pieces do not refer. */
    public TestSignal startingAt(double seconds) {
        startSeconds = seconds;
        return this;
    }

    public double startSeconds() {
        return startSeconds;
    }

    public double sampleRateHz() {
        return sampleRateHz;
    }

    /** The samples. */
    public double[] samples() {
        double[] share = new double[count];
        for (Piece piece : pieces) {
            double rise = ramp == null ? rampSeconds : ramp.applyAsDouble(piece.riseSeconds());
            double fall = ramp == null ? rampSeconds : ramp.applyAsDouble(piece.fallSeconds());
            int from = (int) Math.max(0, Math.floor((piece.riseSeconds() - rise) * sampleRateHz));
            int to = (int) Math.min(count - 1, Math.ceil((piece.fallSeconds() + fall) * sampleRateHz));
            for (int i = from; i <= to; i++) {
                double t = i / sampleRateHz;
                share[i] +=
                        piece.height() * (step(t - piece.riseSeconds(), rise) - step(t - piece.fallSeconds(), fall));
            }
        }
        Random random = new Random(seed);
        double[] samples = new double[count];
        for (int i = 0; i < count; i++) {
            double t = i / sampleRateHz;
            double l = low + lowShift.applyAsDouble(t);
            double h = high + highShift.applyAsDouble(t);
            double value = l + share[i] * (h - l) + (noise > 0 ? noise * random.nextGaussian() : 0);
            samples[i] = step > 0 ? Math.rint(value / step) * step : value;
        }
        return samples;
    }

    private static double step(double sinceMiddle, double ramp) {
        if (ramp <= 0) {
            return sinceMiddle >= 0 ? 1 : 0;
        }
        return Math.clamp(0.5 + sinceMiddle / ramp, 0, 1);
    }
}
