// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Samples that each have their own time stamp, unevenly spaced. Stamps never go backward; equal ones occur (a step
 * written as two rows of one instant).
 */
public final class StampedTimeBase implements TimeBase {
    private final Samples stamps;
    private final List<Segment> segments;
    private final double stepSeconds;
    private final double stampUncertaintySeconds;

    private StampedTimeBase(
            Samples stamps, List<Segment> segments, double stepSeconds, double stampUncertaintySeconds) {
        this.stamps = stamps;
        this.segments = segments;
        this.stepSeconds = stepSeconds;
        this.stampUncertaintySeconds = stampUncertaintySeconds;
    }

    /**
     * Makes the time base.
     *
     * @param stamps one column, the instants in seconds; it must stay open as long as the time base is used
     * @param segments in order, covering all stamps
     * @param stepSeconds typical distance of two stamps
     * @param stampUncertaintySeconds standard uncertainty of one stamp
     */
    public static StampedTimeBase of(
            Samples stamps, List<Segment> segments, double stepSeconds, double stampUncertaintySeconds) {
        List<Segment> checked = Segments.checked(segments);
        if (stamps.channelCount() != 1 || stamps.sampleCount() != Segments.sampleCount(checked)) {
            throw new IllegalArgumentException("segments do not cover the one column of stamps");
        }
        return new StampedTimeBase(stamps, checked, stepSeconds, stampUncertaintySeconds);
    }

    @Override
    public List<Segment> segments() {
        return segments;
    }

    @Override
    public OptionalDouble sampleRateHz() {
        return OptionalDouble.empty();
    }

    @Override
    public double stepSeconds() {
        return stepSeconds;
    }

    @Override
    public double stampUncertaintySeconds() {
        return stampUncertaintySeconds;
    }

    @Override
    public void readSeconds(long firstSample, double[] target, int offset, int count) throws IOException {
        stamps.read(0, firstSample, target, offset, count);
    }
}
