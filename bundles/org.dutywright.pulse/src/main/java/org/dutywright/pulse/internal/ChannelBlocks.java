// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.capture.SampleBlocks;

/**
 * One channel in blocks, with instants counted from the first sample of the capture. Relative instants keep their
 * digits where the file's time column has a large offset (seconds of the day, of the epoch).
 */
public final class ChannelBlocks {
    private final SampleBlocks blocks;
    private final Progress progress;
    private final double sampleRateHz;
    private final double typicalStep;
    private final double originSeconds;
    private final double[] relative;
    private long segmentFirst;
    private double segmentSeconds;
    private double carriedSeconds;

    private ChannelBlocks(Capture capture, int channel, int capacity, Progress progress) throws IOException {
        blocks = SampleBlocks.of(capture, channel, capacity);
        this.progress = progress;
        sampleRateHz = capture.timeBase().sampleRateHz().orElse(0);
        typicalStep = capture.timeBase().stepSeconds();
        originSeconds = originSeconds(capture);
        relative = new double[sampleRateHz > 0 ? 0 : capacity];
    }

    /** Instant of the first sample of a capture, to which all relative instants refer; 0 for an empty capture. */
    public static double originSeconds(Capture capture) throws IOException {
        return capture.sampleCount() == 0 ? 0 : capture.timeBase().secondsAt(0);
    }

    /** Blocks of the usual size. */
    public static ChannelBlocks of(Capture capture, int channel, Progress progress) throws IOException {
        return new ChannelBlocks(capture, channel, SampleBlocks.CAPACITY, progress);
    }

    /** Blocks of at most {@code capacity} samples; for tests of block borders. */
    public static ChannelBlocks of(Capture capture, int channel, int capacity, Progress progress) throws IOException {
        return new ChannelBlocks(capture, channel, capacity, progress);
    }

    /** Goes to the next block; false after the last one. */
    public boolean next() throws IOException {
        progress.checkCancelled();
        int before = blocks.count();
        if (before > 0) {
            carriedSeconds = seconds(before - 1);
            progress.worked(before);
        }
        if (!blocks.next()) {
            return false;
        }
        if (blocks.segmentStart()) {
            segmentFirst = blocks.firstSample();
            segmentSeconds = blocks.secondsAt(0) - originSeconds;
        }
        if (relative.length > 0) {
            for (int i = 0; i < blocks.count(); i++) {
                relative[i] = blocks.secondsAt(i) - originSeconds;
            }
        }
        return true;
    }

    /** The samples, the first {@link #count} of a reused array. */
    public double[] values() {
        return blocks.values();
    }

    /** Index of the block's first sample in the capture. */
    public long firstSample() {
        return blocks.firstSample();
    }

    /** Number of samples in the block. */
    public int count() {
        return blocks.count();
    }

    /** Whether a segment starts with this block. */
    public boolean segmentStart() {
        return blocks.segmentStart();
    }

    /** Whether a segment ends with this block. */
    public boolean segmentEnd() {
        return blocks.segmentEnd();
    }

    /** Typical distance of two samples in seconds, above 0. */
    public double typicalStep() {
        return typicalStep > 0 ? typicalStep : Double.MIN_NORMAL;
    }

    /** Instant of a sample of the block, from the capture's first sample. */
    public double seconds(int index) {
        if (relative.length > 0) {
            return index < 0 ? carriedSeconds : relative[index];
        }
        return segmentSeconds + (blocks.firstSample() - segmentFirst + index) / sampleRateHz;
    }

    /**
     * Instant between a sample and the one before it, which may be the last one of the block before.
     *
     * @param index of the later sample in the block
     * @param share of the way from the earlier sample to the later one, 0 to 1
     */
    public double secondsBefore(int index, double share) {
        if (relative.length > 0) {
            double earlier = seconds(index - 1);
            return earlier + share * (relative[index] - earlier);
        }
        return segmentSeconds + (blocks.firstSample() - segmentFirst + index - 1 + share) / sampleRateHz;
    }

    /** Distance of a sample to the one before it, which may be the last one of the block before. */
    public double stepBefore(int index) {
        return relative.length > 0 ? relative[index] - seconds(index - 1) : 1 / sampleRateHz;
    }

    /** Index of the first sample from {@code from} on that lies at an instant or later; the count if none does. */
    public int firstFrom(double atSeconds, int from) {
        int low = from;
        int high = blocks.count();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (seconds(middle) < atSeconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** As {@link #integral}, of the squared signal. */
    public double integralOfSquares(double valueBefore, int from, int to) {
        double[] values = blocks.values();
        if (relative.length == 0) {
            double last = values[to - 1];
            double ends = valueBefore * valueBefore - last * last + valueBefore * values[from];
            double inner = 2 * Sums.ofSquares(values, from, to, 0) + Sums.ofNeighbours(values, from, to);
            return (ends + inner) / (3 * sampleRateHz);
        }
        double sum = 0;
        double earlier = valueBefore;
        for (int i = from; i < to; i++) {
            double value = values[i];
            sum += (earlier * (earlier + value) + value * value) * stepBefore(i);
            earlier = value;
        }
        return sum / 3;
    }

    /**
     * Integral of the piecewise linear signal from the sample before {@code from} to the sample {@code to - 1}.
     *
     * @param valueBefore value of the sample before {@code from}
     */
    public double integral(double valueBefore, int from, int to) {
        double[] values = blocks.values();
        if (relative.length == 0) {
            return (Sums.of(values, from, to) + (valueBefore - values[to - 1]) / 2) / sampleRateHz;
        }
        double sum = 0;
        double earlier = valueBefore;
        double earlierSeconds = seconds(from - 1);
        for (int i = from; i < to; i++) {
            sum += (earlier + values[i]) / 2 * (relative[i] - earlierSeconds);
            earlier = values[i];
            earlierSeconds = relative[i];
        }
        return sum;
    }
}
