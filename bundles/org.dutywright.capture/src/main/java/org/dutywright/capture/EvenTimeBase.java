// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Evenly spaced samples: within a segment, sample {@code k} was taken at the segment's start plus {@code k / rate}.
 * Immutable; reading never fails.
 */
public final class EvenTimeBase implements TimeBase {
    private final double sampleRateHz;
    private final List<Segment> segments;

    private EvenTimeBase(double sampleRateHz, List<Segment> segments) {
        this.sampleRateHz = sampleRateHz;
        this.segments = segments;
    }

    /**
     * One segment.
     *
     * @param startSeconds instant of the first sample
     * @param sampleRateHz samples a second, finite and above 0
     * @param sampleCount number of samples
     */
    public static EvenTimeBase of(double startSeconds, double sampleRateHz, long sampleCount) {
        return of(sampleRateHz, List.of(new Segment(0, sampleCount, startSeconds)));
    }

    /**
     * Several segments.
     *
     * @param sampleRateHz samples a second, finite and above 0
     * @param segments in order, without holes between their indices
     * @throws IllegalArgumentException if the rate or the segments are not so
     */
    public static EvenTimeBase of(double sampleRateHz, List<Segment> segments) {
        if (!(sampleRateHz > 0) || !Double.isFinite(1 / sampleRateHz)) {
            throw new IllegalArgumentException("sample rate must be above 0 Hz, not " + sampleRateHz);
        }
        return new EvenTimeBase(sampleRateHz, Segments.checked(segments));
    }

    @Override
    public List<Segment> segments() {
        return segments;
    }

    @Override
    public OptionalDouble sampleRateHz() {
        return OptionalDouble.of(sampleRateHz);
    }

    @Override
    public double stepSeconds() {
        return 1 / sampleRateHz;
    }

    @Override
    public double stampUncertaintySeconds() {
        return 0;
    }

    @Override
    public void readSeconds(long firstSample, double[] target, int offset, int count) {
        Objects.checkFromIndexSize(firstSample, count, Segments.sampleCount(segments));
        long sample = firstSample;
        int done = 0;
        int index = count == 0 ? 0 : Segments.indexOf(segments, firstSample);
        while (done < count) {
            Segment segment = segments.get(index++);
            long inSegment = sample - segment.firstSample();
            int here = (int) Math.min(count - done, segment.endSample() - sample);
            for (int i = 0; i < here; i++) {
                // a quotient, not a multiple of the step: correctly rounded for rates that are whole numbers
                target[offset + done + i] = segment.startSeconds() + (inSegment + i) / sampleRateHz;
            }
            done += here;
            sample += here;
        }
    }

    @Override
    public double secondsAt(long sample) {
        Segment segment = segments.get(Segments.indexOf(segments, sample));
        return segment.startSeconds() + (sample - segment.firstSample()) / sampleRateHz;
    }
}
