// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.util.Objects;

/** Values that lie in arrays. */
final class ArraySamples implements Samples {
    private final double[][] values;
    private final int sampleCount;

    private ArraySamples(double[][] values, int sampleCount) {
        this.values = values;
        this.sampleCount = sampleCount;
    }

    /** Copies arrays of equal length and of finite values. */
    static ArraySamples copyOf(double[][] values) {
        int sampleCount = values.length == 0 ? 0 : values[0].length;
        double[][] copy = new double[values.length][];
        for (int i = 0; i < values.length; i++) {
            copy[i] = values[i].clone();
            if (copy[i].length != sampleCount) {
                throw new IllegalArgumentException("arrays differ in length");
            }
            for (double value : copy[i]) {
                if (!Double.isFinite(value)) {
                    throw new IllegalArgumentException("value is not finite: " + value);
                }
            }
        }
        return new ArraySamples(copy, sampleCount);
    }

    @Override
    public int channelCount() {
        return values.length;
    }

    @Override
    public long sampleCount() {
        return sampleCount;
    }

    @Override
    public void read(int channel, long firstSample, double[] target, int offset, int count) {
        Objects.checkFromIndexSize(firstSample, count, (long) sampleCount);
        System.arraycopy(values[channel], (int) firstSample, target, offset, count);
    }

    @Override
    public void close() {
        // the garbage collector frees arrays
    }
}
