// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.List;
import java.util.Objects;

/**
 * Walks over one channel from its first sample to its last, a block at a time. A block never crosses the border of
 * a segment. The cursor is the block: each {@link #next} overwrites the block before. For one thread.
 *
 * <pre>{@code
 * SampleBlocks blocks = SampleBlocks.of(capture, 0);
 * while (blocks.next()) {
 *     for (int i = 0; i < blocks.count(); i++) {
 *         use(blocks.secondsAt(i), blocks.values()[i]);
 *     }
 * }
 * }</pre>
 */
public final class SampleBlocks {
    /** Largest number of samples in a block. */
    public static final int CAPACITY = 1 << 16;

    private final Samples samples;
    private final TimeBase timeBase;
    private final int channel;
    private final double[] values;
    private final double[] stamps;
    private final double sampleRateHz;
    private final List<Segment> segments;
    private int nextSegment;
    private Segment segment = new Segment(0, 0, 0);
    private long firstSample;
    private int count;

    private SampleBlocks(Capture capture, int channel, int capacity) {
        samples = capture.samples();
        timeBase = capture.timeBase();
        segments = timeBase.segments();
        sampleRateHz = timeBase.sampleRateHz().orElse(0);
        this.channel = channel;
        values = new double[capacity];
        stamps = new double[sampleRateHz > 0 ? 0 : capacity];
    }

    /** Blocks of at most {@link #CAPACITY} samples of one channel. */
    public static SampleBlocks of(Capture capture, int channel) {
        return of(capture, channel, CAPACITY);
    }

    /** Blocks of at most {@code capacity} samples of one channel. */
    public static SampleBlocks of(Capture capture, int channel, int capacity) {
        Objects.checkIndex(channel, capture.channels().size());
        return new SampleBlocks(capture, channel, capacity);
    }

    /**
     * Goes to the next block.
     *
     * @return false after the last one
     */
    public boolean next() throws IOException {
        long start = firstSample + count;
        if (start == segment.endSample()) {
            if (nextSegment == segments.size()) {
                count = 0;
                firstSample = start;
                return false;
            }
            segment = segments.get(nextSegment++);
        }
        firstSample = start;
        count = (int) Math.min(values.length, segment.endSample() - start);
        samples.read(channel, firstSample, values, 0, count);
        if (stamps.length > 0) {
            timeBase.readSeconds(firstSample, stamps, 0, count);
        }
        return true;
    }

    /** Index of the block's first sample in the capture. */
    public long firstSample() {
        return firstSample;
    }

    /** Number of samples in the block. */
    public int count() {
        return count;
    }

    /** The samples, the first {@link #count} of a reused array, in the channel's unit. */
    public double[] values() {
        return values;
    }

    /** Whether a segment starts with this block: it is the first one, or a gap lies before it. */
    public boolean segmentStart() {
        return firstSample == segment.firstSample();
    }

    /** Whether a segment ends with this block: it is the last one, or a gap lies after it. */
    public boolean segmentEnd() {
        return firstSample + count == segment.endSample();
    }

    /** Instant of the block's sample {@code index} (0 is its first one) in the capture's time. */
    public double secondsAt(int index) {
        if (stamps.length > 0) {
            return stamps[index];
        }
        return segment.startSeconds() + (firstSample - segment.firstSample() + index) / sampleRateHz;
    }
}
