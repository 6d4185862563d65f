// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Segment;
import org.dutywright.capture.TimeBase;

/** Looks at the samples of one channel in a short stretch of time. */
final class SampleProbe {
    /** More samples than this around the middle of a stretch are not looked at. */
    private static final int MAX_SAMPLES = 1 << 18;

    private final Capture capture;
    private final int channel;

    private SampleProbe(Capture capture, int channel) {
        this.capture = capture;
        this.channel = channel;
    }

    /** Of the channel with this name, which must be there. */
    static SampleProbe of(Capture capture, String captureName) {
        for (int i = 0; i < capture.channels().size(); i++) {
            if (capture.channels().get(i).name().equals(captureName)) {
                return new SampleProbe(capture, i);
            }
        }
        throw new IllegalArgumentException("no channel " + captureName + " in the capture");
    }

    /**
     * Mean of the samples in the middle half of a stretch, so that edges at its ends do not count.
     *
     * @return empty if no sample lies there
     */
    OptionalDouble middleMean(Span span) throws IOException {
        double quarter = span.lengthSeconds() / 4;
        double[] values = read(new Span(span.fromSeconds() + quarter, span.toSeconds() - quarter));
        return values.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(mean(values, Double.NaN, true));
    }

    /**
     * Level that one sample in a hundred lies below, which short dips reach and single noisy samples do not.
     *
     * @return empty if no sample lies there
     */
    OptionalDouble lowest(Span span) throws IOException {
        double[] values = read(span);
        return values.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(new Percentile(1).evaluate(values));
    }

    /**
     * Mean of the samples of one state.
     *
     * @param threshold value between the states
     * @return empty if no sample of the state lies in the stretch
     */
    OptionalDouble stateMean(Span span, double threshold, boolean high) throws IOException {
        double mean = mean(read(span), threshold, high);
        return Double.isNaN(mean) ? OptionalDouble.empty() : OptionalDouble.of(mean);
    }

    /** Mean of those above or below the threshold, of all without a threshold; NaN if there are none. */
    private static double mean(double[] values, double threshold, boolean high) {
        double sum = 0;
        int count = 0;
        for (double value : values) {
            if (Double.isNaN(threshold) || value > threshold == high) {
                sum += value;
                count++;
            }
        }
        return count == 0 ? Double.NaN : sum / count;
    }

    private double[] read(Span span) throws IOException {
        long from = indexAt(span.fromSeconds());
        long to = Math.min(indexAt(span.toSeconds()) + 1, capture.sampleCount());
        if (to - from > MAX_SAMPLES) {
            from += (to - from - MAX_SAMPLES) / 2;
            to = from + MAX_SAMPLES;
        }
        double[] values = new double[(int) Math.max(0, to - from)];
        if (values.length > 0) {
            capture.samples().read(channel, from, values, 0, values.length);
        }
        return values;
    }

    /** Index of the first sample not before an instant. */
    private long indexAt(double seconds) throws IOException {
        TimeBase base = capture.timeBase();
        List<Segment> segments = base.segments();
        Segment found = segments.get(0);
        for (Segment segment : segments) {
            if (segment.startSeconds() <= seconds) {
                found = segment;
            }
        }
        if (base.sampleRateHz().isPresent()) {
            double offset =
                    (seconds - found.startSeconds()) * base.sampleRateHz().getAsDouble();
            return found.firstSample() + Math.clamp((long) Math.ceil(offset), 0, found.sampleCount());
        }
        return search(base, found, seconds);
    }

    private static long search(TimeBase base, Segment segment, double seconds) throws IOException {
        long low = segment.firstSample();
        long high = segment.endSample();
        while (low < high) {
            long middle = (low + high) >>> 1;
            if (base.secondsAt(middle) < seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
