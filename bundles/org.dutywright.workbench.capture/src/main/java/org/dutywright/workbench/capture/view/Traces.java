// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Overview;
import org.dutywright.capture.Segment;
import org.dutywright.capture.TimeBase;

/**
 * Draws a capture in windows of time: for each column of pixels the smallest and the largest value of the samples in it,
 * or the samples themselves where there are few. Safe for several threads; reads the capture, so not for the
 * user-interface thread but for single readings.
 */
public final class Traces {
    /** Samples are drawn themselves where they are not more than the points of all columns would be. */
    private static final int POINTS_PER_COLUMN = 2;

    private final Capture capture;
    private final List<Overview> overviews;
    private final SampleFinder finder;
    private final long[] starts;

    private Traces(Capture capture, List<Overview> overviews) {
        this.capture = capture;
        this.overviews = List.copyOf(overviews);
        this.finder = new SampleFinder(capture.timeBase(), capture.sampleCount());
        this.starts = capture.timeBase().segments().stream()
                .mapToLong(Segment::firstSample)
                .toArray();
    }

    /** The traces of a capture with at least one sample. */
    public static Traces of(Capture capture, List<Overview> overviews) {
        if (overviews.size() != capture.channels().size()) {
            throw new IllegalArgumentException(overviews.size() + " overviews for " + capture.channels());
        }
        return new Traces(capture, overviews);
    }

    /** Number of channels. */
    public int channelCount() {
        return overviews.size();
    }

    /** Shows the whole capture. */
    public TimeView wholeView() throws IOException {
        TimeBase timeBase = capture.timeBase();
        double first = timeBase.secondsAt(0);
        double last = timeBase.secondsAt(capture.sampleCount() - 1);
        double step = timeBase.stepSeconds();
        double end = last > first ? last : first + (step > 0 ? step : 1);
        return TimeView.of(new TimeWindow(first, end), step > 0 ? step : 0);
    }

    /** The lanes of the channels, by the extremes of the whole capture. */
    public List<Lane> lanes() throws IOException {
        List<Lane> lanes = new ArrayList<>();
        for (int channel = 0; channel < channelCount(); channel++) {
            Channel about = capture.channels().get(channel);
            Overview.Columns all = overviews.get(channel).columns(0, capture.sampleCount(), 1);
            lanes.add(Lane.of(about.name(), about.unit(), all.min(0), all.max(0)));
        }
        return lanes;
    }

    /** The sample nearest to an instant, empty where there is a gap in the recording. */
    public Optional<Reading> reading(int channel, double seconds) throws IOException {
        long sample = finder.nearest(seconds);
        double at = capture.timeBase().secondsAt(sample);
        if (Math.abs(at - seconds) > capture.timeBase().stepSeconds() && isInGap(sample, at, seconds)) {
            return Optional.empty();
        }
        double[] value = new double[1];
        capture.samples().read(channel, sample, value, 0, 1);
        return Optional.of(new Reading(at, value[0]));
    }

    private boolean isInGap(long sample, double at, double seconds) {
        if (seconds < at) {
            return sample == 0 || bordersBetween(sample - 1, sample);
        }
        return sample == capture.sampleCount() - 1 || bordersBetween(sample, sample + 1);
    }

    /**
     * Draws all channels.
     *
     * @param cancelled asked now and then; an unfinished drawing is of no use
     * @return empty if cancelled
     */
    public Optional<Drawing> draw(TimeScale scale, BooleanSupplier cancelled) throws IOException {
        long first = finder.firstAtOrAfter(scale.shown().startSeconds(), 0);
        long end = finder.firstAtOrAfter(Math.nextUp(scale.shown().endSeconds()), first);
        boolean single = end - first <= (long) POINTS_PER_COLUMN * scale.widthPixels();
        long[] borders = single ? new long[0] : borders(scale, first, end);
        List<List<Run>> channels = new ArrayList<>();
        for (int channel = 0; channel < channelCount(); channel++) {
            if (cancelled.getAsBoolean()) {
                return Optional.empty();
            }
            channels.add(single ? samples(channel, first, end) : columns(channel, scale, borders));
        }
        return Optional.of(new Drawing(scale, channels, single));
    }

    // one sample more on either side, so that the line goes on to the edges of the window
    private List<Run> samples(int channel, long first, long end) throws IOException {
        long from = Math.max(0, first - 1);
        int count = (int) (Math.min(capture.sampleCount(), end + 1) - from);
        double[] seconds = new double[count];
        double[] values = new double[count];
        capture.timeBase().readSeconds(from, seconds, 0, count);
        capture.samples().read(channel, from, values, 0, count);
        Runs runs = new Runs(count);
        for (int i = 0; i < count; i++) {
            if (i > 0 && bordersBetween(from + i - 1, from + i)) {
                runs.interrupt();
            }
            runs.current().add(seconds[i], values[i]);
        }
        return runs.all();
    }

    private List<Run> columns(int channel, TimeScale scale, long[] borders) throws IOException {
        Overview overview = overviews.get(channel);
        Runs runs = new Runs(2 * scale.widthPixels());
        int last = -1;
        for (int column = 0; column < scale.widthPixels(); column++) {
            if (borders[column] == borders[column + 1]) {
                continue;
            }
            // a gap shorter than a column has no pixels to show it
            if (last >= 0 && last < column - 1 && bordersBetween(borders[column] - 1, borders[column])) {
                runs.interrupt();
            }
            Overview.Columns extremes = overview.columns(borders[column], borders[column + 1], 1);
            runs.current().addColumn(scale.secondsAt(column + 0.5), extremes.min(0), extremes.max(0));
            last = column;
        }
        return runs.all();
    }

    /** The first sample of each column, and the one after the last. */
    private long[] borders(TimeScale scale, long first, long end) throws IOException {
        long[] borders = new long[scale.widthPixels() + 1];
        borders[0] = first;
        for (int column = 1; column < scale.widthPixels(); column++) {
            borders[column] = Math.min(end, finder.firstAtOrAfter(scale.secondsAt(column), borders[column - 1]));
        }
        borders[scale.widthPixels()] = end;
        return borders;
    }

    /** Whether a segment begins after the first sample and not after the second. */
    private boolean bordersBetween(long before, long after) {
        int index = Arrays.binarySearch(starts, after);
        int segment = index >= 0 ? index : -index - 2;
        return segment >= 0 && starts[segment] > before;
    }

    private static final class Runs {
        private final List<Run> done = new ArrayList<>();
        private final int expected;
        private Run.Builder open;

        Runs(int expected) {
            this.expected = expected;
            this.open = new Run.Builder(expected);
        }

        Run.Builder current() {
            return open;
        }

        void interrupt() {
            if (!open.isEmpty()) {
                done.add(open.build());
                open = new Run.Builder(Math.min(expected, 16));
            }
        }

        List<Run> all() {
            interrupt();
            return List.copyOf(done);
        }
    }
}
