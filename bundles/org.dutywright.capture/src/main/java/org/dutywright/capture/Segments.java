// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** What several classes ask of a list of segments. */
final class Segments {
    private Segments() {}

    /** A copy of the list if its segments follow each other from sample 0 on, else an IllegalArgumentException. */
    static List<Segment> checked(List<Segment> segments) {
        long next = 0;
        for (Segment segment : segments) {
            if (segment.firstSample() != next
                    || segment.sampleCount() < 1
                    || !Double.isFinite(segment.startSeconds())) {
                throw new IllegalArgumentException("segment does not follow sample " + (next - 1) + ": " + segment);
            }
            next = segment.endSample();
        }
        return List.copyOf(segments);
    }

    static long sampleCount(List<Segment> segments) {
        return segments.isEmpty() ? 0 : segments.get(segments.size() - 1).endSample();
    }

    /** Index of the segment that holds a sample, by bisection. */
    static int indexOf(List<Segment> segments, long sample) {
        if (sample < 0 || sample >= sampleCount(segments)) {
            throw new IndexOutOfBoundsException(
                    "sample " + sample + " of " + sampleCount(segments) + " does not exist");
        }
        int low = 0;
        int high = segments.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (segments.get(middle).firstSample() <= sample) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    /** The parts of segments that lie in a window, renumbered from its first sample. */
    static List<Segment> window(TimeBase base, long firstSample, long sampleCount) throws IOException {
        List<Segment> cut = new ArrayList<>();
        long end = firstSample + sampleCount;
        for (Segment segment : base.segments()) {
            long from = Math.max(segment.firstSample(), firstSample);
            long to = Math.min(segment.endSample(), end);
            if (from < to) {
                double start = from == segment.firstSample() ? segment.startSeconds() : base.secondsAt(from);
                cut.add(new Segment(from - firstSample, to - from, start));
            }
        }
        return cut;
    }
}
