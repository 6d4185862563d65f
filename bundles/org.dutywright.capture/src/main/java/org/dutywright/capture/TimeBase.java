// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * When the samples were taken, in the capture's time: that of the file's time column, else seconds from the
 * first sample. Samples are either evenly spaced within each segment, or each has its own time stamp.
 */
public interface TimeBase {
    /** The runs of samples without a gap, in order; they cover all samples. */
    List<Segment> segments();

    /** Samples a second where the spacing is even within each segment, else empty. */
    OptionalDouble sampleRateHz();

    /** Typical distance of two samples in seconds: exact for an even base, the median for time stamps. */
    double stepSeconds();

    /**
     * Standard uncertainty of one time stamp in seconds that comes from the digits in which it was printed; 0 if
     * the spacing is even.
     */
    double stampUncertaintySeconds();

    /**
     * Reads instants.
     *
     * @param firstSample index of the first one
     * @param target receives {@code count} instants in seconds from {@code offset} on
     */
    void readSeconds(long firstSample, double[] target, int offset, int count) throws IOException;

    /** Instant of one sample in seconds; for single look-ups. */
    default double secondsAt(long sample) throws IOException {
        double[] one = new double[1];
        readSeconds(sample, one, 0, 1);
        return one[0];
    }

    /** The gaps between the segments. */
    default List<Gap> gaps() throws IOException {
        List<Gap> gaps = new ArrayList<>();
        List<Segment> segments = segments();
        for (int i = 1; i < segments.size(); i++) {
            gaps.add(new Gap(
                    secondsAt(segments.get(i - 1).endSample() - 1),
                    segments.get(i).startSeconds()));
        }
        return gaps;
    }
}
