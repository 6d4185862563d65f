// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Segment;

/**
 * The stretch of time that a capture covers, gaps included. Each sample stands for one step, so that 200,000
 * samples at 100 kHz last 2 s; uneven samples end one median step after the last.
 *
 * @param startSeconds instant of the first sample, empty without samples
 * @param durationSeconds from there to one step after the last sample, empty without samples
 */
public record Span(OptionalDouble startSeconds, OptionalDouble durationSeconds) {
    /** Of a capture. */
    public static Span of(Capture capture) throws IOException {
        List<Segment> segments = capture.timeBase().segments();
        if (capture.sampleCount() == 0 || segments.isEmpty()) {
            return new Span(OptionalDouble.empty(), OptionalDouble.empty());
        }
        double start = segments.get(0).startSeconds();
        return new Span(OptionalDouble.of(start), OptionalDouble.of(duration(capture, segments, start)));
    }

    private static double duration(Capture capture, List<Segment> segments, double start) throws IOException {
        OptionalDouble rate = capture.timeBase().sampleRateHz();
        Segment last = segments.get(segments.size() - 1);
        if (rate.isPresent()) {
            // By the rate, not by adding steps: 200,000 / 100,000 Hz is 2 exactly.
            return last.startSeconds() - start + last.sampleCount() / rate.getAsDouble();
        }
        return capture.timeBase().secondsAt(capture.sampleCount() - 1)
                - start
                + capture.timeBase().stepSeconds();
    }
}
