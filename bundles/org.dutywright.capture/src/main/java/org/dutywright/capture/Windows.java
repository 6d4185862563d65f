// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;

/** Parts of captures. */
final class Windows {
    private Windows() {}

    static Capture between(Capture capture, OptionalDouble fromSeconds, OptionalDouble toSeconds)
            throws UnreadableException, IOException {
        long count = capture.sampleCount();
        long first = fromSeconds.isPresent() ? countBefore(capture, fromSeconds.getAsDouble(), false) : 0;
        long end = toSeconds.isPresent() ? countBefore(capture, toSeconds.getAsDouble(), true) : count;
        if (first >= end) {
            Path file = capture.sources().isEmpty()
                    ? Path.of("capture")
                    : capture.sources().get(0).path();
            String problem =
                    "no sample lies" + (fromSeconds.isPresent() ? " from " + fromSeconds.getAsDouble() + " s" : "")
                            + (toSeconds.isPresent() ? " to " + toSeconds.getAsDouble() + " s" : "");
            throw UnreadableException.lacks(file, problem, runs(capture));
        }
        return rows(capture, first, end - first);
    }

    private static String runs(Capture capture) throws IOException {
        TimeBase base = capture.timeBase();
        return "the recording runs from " + base.secondsAt(0) + " s to " + base.secondsAt(capture.sampleCount() - 1)
                + " s";
    }

    /** The rows of a window; all of them give the capture itself. */
    static Capture rows(Capture capture, long first, long count) throws IOException {
        if (first == 0 && count == capture.sampleCount()) {
            return capture;
        }
        TimeBase base = capture.timeBase();
        List<Segment> segments = Segments.window(base, first, count);
        TimeBase cut;
        if (base.sampleRateHz().isPresent()) {
            cut = EvenTimeBase.of(base.sampleRateHz().getAsDouble(), segments);
        } else {
            Samples stamps = SampleViews.window(SampleViews.instants(base, capture.sampleCount()), first, count);
            cut = StampedTimeBase.of(stamps, segments, base.stepSeconds(), base.stampUncertaintySeconds());
        }
        Samples samples = SampleViews.window(capture.samples(), first, count);
        return new Capture(
                capture.sources(),
                capture.channels(),
                cut,
                samples,
                capture.guessed(),
                capture.statedRates(),
                capture.asRead());
    }

    /** Number of samples before an instant, or up to and with it; instants never go backward, so bisection finds it. */
    private static long countBefore(Capture capture, double seconds, boolean inclusive) throws IOException {
        long low = 0;
        long high = capture.sampleCount();
        while (low < high) {
            long middle = (low + high) >>> 1;
            double at = capture.timeBase().secondsAt(middle);
            if (at < seconds || (inclusive && at == seconds)) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
