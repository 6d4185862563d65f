// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.EvenTimeBase;
import org.dutywright.capture.Samples;

/**
 * A long healthy signal that is computed each time it is read and held nowhere. Its noise is normal up to 4.9 standard
 * deviations and depends on nothing but the seed and the index of the sample.
 *
 * @param sampleRateHz samples a second
 * @param sampleCount number of samples
 * @param carrierHz of the pulses
 * @param rampSeconds linear edges, 0 to 100 %
 * @param noiseShare standard deviation of the noise as a share of the swing
 * @param codeStep samples are whole multiples of it, 0 for none
 * @param seed of the noise
 * @param dutyShare duty over time, slow against the carrier
 */
record StreamedSignal(
        double sampleRateHz,
        long sampleCount,
        double carrierHz,
        double rampSeconds,
        double noiseShare,
        double codeStep,
        long seed,
        DoubleUnaryOperator dutyShare)
        implements Samples {

    private static final double LOW = 0.5;
    private static final double SWING = 11;
    private static final float[] NORMAL = normal();

    private static float[] normal() {
        float[] values = new float[1 << 20];
        Random random = new Random(1);
        for (int i = 0; i < values.length; i++) {
            values[i] = (float) random.nextGaussian();
        }
        return values;
    }

    /** A capture of this one channel. */
    Capture capture() {
        return new Capture(
                List.of(),
                List.of(new Channel("signal1", "V")),
                EvenTimeBase.of(0, sampleRateHz, sampleCount),
                this,
                Map.of());
    }

    @Override
    public int channelCount() {
        return 1;
    }

    @Override
    public void read(int channel, long firstSample, double[] target, int offset, int count) {
        Objects.checkFromIndexSize(firstSample, count, sampleCount);
        double halfRamp = rampSeconds * carrierHz / 2;
        double duty = 0;
        long dutyOf = -1;
        for (int i = 0; i < count; i++) {
            long sample = firstSample + i;
            double periods = sample / sampleRateHz * carrierHz + 0.4;
            long period = (long) periods;
            if (period != dutyOf) {
                duty = dutyShare.applyAsDouble(period / carrierHz);
                dutyOf = period;
            }
            double value = LOW + SWING * share(periods - period, duty, halfRamp);
            if (noiseShare > 0) {
                value += SWING * noiseShare * NORMAL[(int) (mix(sample + seed * 0x632BE59BD9B4E019L) >>> 44)];
            }
            target[offset + i] = codeStep > 0 ? Math.rint(value / codeStep) * codeStep : value;
        }
    }

    private static double share(double phase, double duty, double halfRamp) {
        if (halfRamp <= 0) {
            return phase < duty ? 1 : 0;
        }
        double rise = phase > 0.98 ? phase - 1 : phase;
        double up = Math.clamp((rise + halfRamp) / (2 * halfRamp), 0, 1);
        double down = Math.clamp((phase - duty + halfRamp) / (2 * halfRamp), 0, 1);
        return phase > 0.98 ? up : up - down;
    }

    private static long mix(long z) {
        long a = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        long b = (a ^ (a >>> 27)) * 0x94D049BB133111EBL;
        return b ^ (b >>> 31);
    }

    @Override
    public void close() {}
}
