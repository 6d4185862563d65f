// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Makes captures: from arrays, from files, and as parts of other captures. */
public final class Captures {
    private Captures() {}

    /**
     * Opens a recording with the readers that are installed.
     *
     * @param files one file, or several whose columns were recorded together
     * @param settings what the user says about them
     * @param progress gets a task for each file
     * @throws UnreadableException if a file is not what it should be, or files do not belong together
     * @throws IOException if a file cannot be read at all ({@link java.nio.file.NoSuchFileException} if there is
     *     none), or the disk is full
     */
    public static Capture open(List<Path> files, ReadSettings settings, Progress progress)
            throws UnreadableException, IOException {
        return open(files, settings, InstalledReaders.find().readers(), progress);
    }

    /**
     * Opens a recording with given readers; else like {@link #open(List, ReadSettings, Progress)}.
     *
     * @param readers the one that finds a file likeliest to be its own reads it
     */
    public static Capture open(List<Path> files, ReadSettings settings, List<CaptureReader> readers, Progress progress)
            throws UnreadableException, IOException {
        return Opening.open(files, settings, readers, progress);
    }

    /**
     * A part of a recording, as a view: closing it closes the whole.
     *
     * @param fromSeconds instant of the first sample that may be in it; empty: from the start
     * @param toSeconds instant of the last sample that may be in it; empty: to the end
     * @throws UnreadableException if no sample lies there
     */
    public static Capture between(Capture capture, OptionalDouble fromSeconds, OptionalDouble toSeconds)
            throws UnreadableException, IOException {
        return Windows.between(capture, fromSeconds, toSeconds);
    }

    /**
     * A capture of evenly spaced values without a gap.
     *
     * @param names one for each array, all different
     * @param units symbols of base units, one for each array
     * @param startSeconds instant of the first sample
     * @param sampleRateHz samples a second
     * @param values one array for each channel, of equal length, copied
     */
    public static Capture ofArrays(
            List<String> names, List<String> units, double startSeconds, double sampleRateHz, double[]... values) {
        List<Segment> one = List.of(new Segment(0, values[0].length, startSeconds));
        return ofArrays(names, units, sampleRateHz, one, values);
    }

    /**
     * A capture of evenly spaced values with gaps between its segments.
     *
     * @param names one for each array, all different
     * @param units symbols of base units, one for each array
     * @param sampleRateHz samples a second within each segment
     * @param segments in order, covering all samples
     * @param values one array for each channel, of equal length, copied
     */
    public static Capture ofArrays(
            List<String> names, List<String> units, double sampleRateHz, List<Segment> segments, double[]... values) {
        TimeBase timeBase = EvenTimeBase.of(sampleRateHz, segments);
        return ofArrays(names, units, timeBase, values);
    }

    /**
     * A capture of unevenly spaced values.
     *
     * @param names one for each array, all different
     * @param units symbols of base units, one for each array
     * @param seconds instant of each sample, never going backward, copied
     * @param values one array for each channel, of equal length, copied
     */
    public static Capture ofStampedArrays(
            List<String> names, List<String> units, double[] seconds, double[]... values) {
        double[] distances = new double[Math.max(0, seconds.length - 1)];
        for (int i = 0; i < distances.length; i++) {
            distances[i] = seconds[i + 1] - seconds[i];
            if (distances[i] < 0) {
                throw new IllegalArgumentException("time goes backward after sample " + i);
            }
        }
        Arrays.sort(distances);
        double step = distances.length == 0 ? 0 : distances[distances.length / 2];
        Samples stamps = ArraySamples.copyOf(new double[][] {seconds});
        List<Segment> one = List.of(new Segment(0, seconds.length, seconds[0]));
        return ofArrays(names, units, StampedTimeBase.of(stamps, one, step, 0), values);
    }

    private static Capture ofArrays(List<String> names, List<String> units, TimeBase timeBase, double[][] values) {
        if (names.size() != values.length || units.size() != values.length) {
            throw new IllegalArgumentException("names, units and arrays differ in number");
        }
        List<Channel> channels = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            channels.add(new Channel(names.get(i), units.get(i)));
        }
        Samples samples = ArraySamples.copyOf(values);
        if (Segments.sampleCount(timeBase.segments()) != samples.sampleCount()) {
            throw new IllegalArgumentException("segments and arrays differ in length");
        }
        return new Capture(List.of(), channels, timeBase, samples, Map.of());
    }
}
