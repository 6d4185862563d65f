// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.internal.Breaks;
import org.dutywright.capture.internal.ColumnStore;
import org.dutywright.capture.internal.TimeBaseFinder;

/**
 * Collects the rows that a reader finds and makes a capture of them. Few values stay on the heap, many go to a
 * temporary file; memory does not grow with the number of rows. Closing a builder that was not finished frees what
 * it holds; after {@link #finish} the capture owns it. For one thread.
 */
public final class CaptureBuilder implements AutoCloseable {
    /** Number of values, time stamps included, up to which they stay on the heap. */
    public static final long HEAP_VALUES = 2L << 20;

    private static final double MOST_SECONDS = 1e20;

    private final List<Channel> channels;
    private final OptionalDouble sampleRateHz;
    private final double startSeconds;
    private final ColumnStore values;
    private final Optional<ColumnStore> stamps;
    private final Map<Integer, CountScale> counts = new LinkedHashMap<>();
    private final BlockExtremes[] extremes;
    private Optional<PlacedRows> placed = Optional.empty();
    private final Breaks breaks = new Breaks();
    private final List<Segment> segments = new ArrayList<>();
    private final List<StatedRate> statedRates = new ArrayList<>();
    private ReadSettings asRead = ReadSettings.none();
    private double stampResolutionSeconds;
    private OptionalDouble exactStepSeconds = OptionalDouble.empty();
    private double firstSeconds;
    private double lastSeconds = Double.NEGATIVE_INFINITY;
    private boolean copied;
    private long rows;
    private long leftOut;
    private long segmentRow;
    private long segmentPosition;
    private boolean finished;

    private CaptureBuilder(
            List<Channel> channels,
            OptionalDouble sampleRateHz,
            double startSeconds,
            boolean stamped,
            long heapValues) {
        this.channels = List.copyOf(channels);
        this.sampleRateHz = sampleRateHz;
        this.startSeconds = startSeconds;
        long heapRows = heapValues / (channels.size() + 1);
        values = new ColumnStore(channels.size(), heapRows * channels.size());
        extremes = channels.stream()
                .map(channel -> BlockExtremes.ofOneOf(channels.size()))
                .toArray(BlockExtremes[]::new);
        stamps = stamped ? Optional.of(new ColumnStore(1, heapRows)) : Optional.empty();
    }

    /**
     * For rows that come evenly, without time stamps.
     *
     * @param channels of the capture
     * @param startSeconds instant of the first row
     * @param sampleRateHz rows a second
     */
    public static CaptureBuilder even(List<Channel> channels, double startSeconds, double sampleRateHz) {
        return even(channels, startSeconds, sampleRateHz, HEAP_VALUES);
    }

    /** Like {@link #even(List, double, double)}, with another number of values that stay on the heap. */
    public static CaptureBuilder even(
            List<Channel> channels, double startSeconds, double sampleRateHz, long heapValues) {
        return new CaptureBuilder(channels, OptionalDouble.of(sampleRateHz), startSeconds, false, heapValues);
    }

    /** For rows that each have a time stamp; {@link #finish} decides whether they are even and where gaps are. */
    public static CaptureBuilder stamped(List<Channel> channels) {
        return stamped(channels, HEAP_VALUES);
    }

    /** Like {@link #stamped(List)}, with another number of values that stay on the heap. */
    public static CaptureBuilder stamped(List<Channel> channels, long heapValues) {
        return new CaptureBuilder(channels, OptionalDouble.empty(), 0, true, heapValues);
    }

    /**
     * Appends a row without a time stamp.
     *
     * @param row one finite value for each channel
     */
    public void append(double[] row) throws IOException {
        sumUp(row);
        values.append(row);
        rows++;
    }

    private void sumUp(double[] row) {
        for (int i = 0; i < extremes.length; i++) {
            extremes[i].add(row[i]);
        }
    }

    /**
     * Appends a row with its time stamp.
     *
     * @param seconds instant, not before that of the row before
     * @param row one finite value for each channel
     */
    public void append(double seconds, double[] row) throws IOException {
        if (!(seconds >= lastSeconds) || stamps.isEmpty()) {
            throw new IllegalArgumentException("time stamp " + seconds + " after " + lastSeconds);
        }
        firstSeconds = rows == 0 ? seconds : firstSeconds;
        lastSeconds = seconds;
        stamps.get().append(seconds);
        append(row);
    }

    /**
     * Appends rows without time stamps that lie channel by channel.
     *
     * @param columns finite values of each channel
     * @param count number of rows: the first values of each array
     */
    public void append(double[][] columns, int count) throws IOException {
        sumUp(columns, count);
        values.append(columns, count);
        rows += count;
    }

    /**
     * Appends rows with their time stamps that lie channel by channel.
     *
     * @param seconds instants, none before the one before
     * @param columns finite values of each channel
     * @param count number of rows: the first values of each array
     */
    public void append(double[] seconds, double[][] columns, int count) throws IOException {
        if (count == 0) {
            return;
        }
        double last = lastSeconds;
        for (int i = 0; i < count; i++) {
            if (!(seconds[i] >= last) || stamps.isEmpty()) {
                throw new IllegalArgumentException("time stamp " + seconds[i] + " after " + last);
            }
            last = seconds[i];
        }
        firstSeconds = rows == 0 ? seconds[0] : firstSeconds;
        lastSeconds = last;
        stamps.get().append(new double[][] {seconds}, count);
        append(columns, count);
    }

    private void sumUp(double[][] columns, int count) {
        for (int i = 0; i < extremes.length; i++) {
            extremes[i].add(columns[i], count);
        }
    }

    /**
     * Says that the rows lie in a file and shall stay there, instead of being appended; for evenly spaced rows, before
     * the first. {@link #takePlaced} then passes over them once. The builder owns them and closes them if it has to.
     *
     * @param samples all rows that there may be
     */
    public void place(Samples samples) {
        if (rows + leftOut > 0 || sampleRateHz.isEmpty() || placed.isPresent()) {
            throw new IllegalStateException("rows are placed before any other, and without stamps");
        }
        placed = Optional.of(new PlacedRows(samples));
    }

    /**
     * Takes the next rows that were placed. Where one holds no number it is left out, and the rows are copied after all.
     *
     * @param count number of rows
     */
    public void takePlaced(long count) throws IOException {
        PlacedRows source = placed.orElseThrow();
        for (long left = count; left > 0; ) {
            int here = source.read(left);
            if (copied) {
                appendComplete(source, here);
            } else if (source.areNumbers(here)) {
                sumUp(source.block(), here);
                rows += here;
            } else {
                copyPlaced(source.samples());
                appendComplete(source, here);
            }
            left -= here;
        }
    }

    private void copyPlaced(Samples samples) throws IOException {
        PlacedRows again = new PlacedRows(samples);
        for (long left = rows; left > 0; ) {
            int here = again.read(left);
            values.append(again.block(), here);
            left -= here;
        }
        copied = true;
    }

    private void appendComplete(PlacedRows source, int count) throws IOException {
        double[] row = new double[channels.size()];
        for (int i = 0; i < count; i++) {
            if (source.row(i, row)) {
                append(row);
            } else {
                leaveOut();
            }
        }
    }

    /** Says that a row follows that cannot be used; a gap is left in its place. */
    public void leaveOut() {
        leftOut++;
        breaks.addBefore(rows);
        if (sampleRateHz.isPresent() && rows > segmentRow && segments.size() <= TimeBaseFinder.MAX_SEGMENTS) {
            endSegment();
        }
        segmentPosition = rows + leftOut;
        segmentRow = rows;
    }

    private void endSegment() {
        double start = startSeconds + segmentPosition / sampleRateHz.getAsDouble();
        segments.add(new Segment(segmentRow, rows - segmentRow, start));
    }

    /** Says how far apart two time stamps are that their printed digits can just tell apart; 0 if never said. */
    public void stampResolution(double seconds) {
        stampResolutionSeconds = seconds;
    }

    /**
     * Says that the time stamps are uneven by intention and exact to the step of a clock: they stay as they are, and a
     * long time between two of them is no gap. Only rows that were left out make gaps.
     *
     * @param clockStepSeconds step of the clock, above 0; the step of the time base
     */
    public void exactStamps(double clockStepSeconds) {
        exactStepSeconds = OptionalDouble.of(clockStepSeconds);
    }

    /**
     * Says that the values of a channel stand for counts of 16 bits with a sign.
     *
     * @param channel index of the channel
     * @param scale of its counts, with whatever factor the values got
     */
    public void counts(int channel, CountScale scale) {
        counts.put(Objects.checkIndex(channel, channels.size()), scale);
    }

    /** Says that a sample rate is stated beside what the time base rests on. */
    public void stated(StatedRate rate) {
        statedRates.add(rate);
    }

    /** Says which settings make the same capture, with all that was guessed. */
    public void asRead(ReadSettings settings) {
        asRead = settings;
    }

    /** Number of rows appended. */
    public long rowCount() {
        return rows;
    }

    /** Number of rows left out. */
    public long leftOutCount() {
        return leftOut;
    }

    /**
     * Makes the capture.
     *
     * @param source the file that was read
     * @param guessed what the reader decided; what is decided about the time base is added
     * @throws UnreadableException if there are fewer than two rows, if time does not advance, or if an even
     *     recording has too many gaps to keep
     */
    public Capture finish(Source source, Map<String, String> guessed, Progress progress)
            throws UnreadableException, IOException {
        Path file = source.path();
        if (rows < 2) {
            throw new UnreadableException(
                    file, "", "holds " + (rows == 0 ? "no complete row" : "one row") + " of values", "record again");
        }
        checkTime(file);
        Samples held = held();
        Map<String, String> all = new LinkedHashMap<>(guessed);
        TimeBase timeBase = stamps.isPresent() ? timeBaseOfStamps(file, all, progress) : evenTimeBase(file, all);
        finished = true;
        List<Samples> others = timeBase instanceof StampedTimeBase ? List.of(stamps.get()) : List.of();
        Samples samples = new OwningSamples(held, others, counts, List.of(extremes));
        return new Capture(List.of(source), channels, timeBase, samples, all, statedRates(timeBase), asRead);
    }

    private Samples held() throws IOException {
        values.finish();
        if (placed.isPresent() && !copied) {
            values.close();
            Samples all = placed.get().samples();
            return rows == all.sampleCount() ? all : SampleViews.window(all, 0, rows);
        }
        if (copied) {
            placed.orElseThrow().samples().close();
            placed = Optional.empty();
        }
        return values;
    }

    // A rate found from printed stamps is as good as the digits of the first and the last of them.
    private List<StatedRate> statedRates(TimeBase timeBase) throws IOException {
        double seconds = timeBase.secondsAt(rows - 1) - timeBase.secondsAt(0);
        double ofStamps = seconds > 0 ? stampResolutionSeconds / seconds : 1;
        return statedRates.stream()
                .map(it -> new StatedRate(it.origin(), it.sampleRateHz(), it.relativeTolerance() + ofStamps))
                .toList();
    }

    /** Times and rates that no recorder has would leave the range of floating point later, in a place that cannot say so. */
    private void checkTime(Path file) throws UnreadableException {
        if (stamps.isPresent()) {
            double step = (lastSeconds - firstSeconds) / rows;
            boolean same = lastSeconds == firstSeconds;
            if (Math.max(Math.abs(firstSeconds), Math.abs(lastSeconds)) > MOST_SECONDS
                    || !(same || step > 1 / MOST_SECONDS)) {
                throw new UnreadableException(
                        file,
                        "",
                        "its time stamps run from " + firstSeconds + " s to " + lastSeconds + " s in " + rows + " rows",
                        "check the time column and its unit");
            }
            return;
        }
        double rate = sampleRateHz.getAsDouble();
        if (!(rate > 1 / MOST_SECONDS && rate < MOST_SECONDS)) {
            throw new UnreadableException(file, "", "has a sample rate of " + rate + " Hz", "check the sample rate");
        }
    }

    private TimeBase evenTimeBase(Path file, Map<String, String> guessed) throws UnreadableException {
        if (segments.size() >= TimeBaseFinder.MAX_SEGMENTS) {
            throw new UnreadableException(
                    file,
                    "",
                    "rows with missing values are spread over the whole recording, " + leftOut + " of them",
                    "pick the complete columns with --channel");
        }
        if (rows > segmentRow) {
            endSegment();
        }
        guessed.put("time base", "even, the sample rate was given");
        guessed.put("sample rate", sampleRateHz.getAsDouble() + " Hz");
        if (segments.size() > 1) {
            guessed.put("gaps", segments.size() - 1 + ", where rows were left out");
        }
        return EvenTimeBase.of(sampleRateHz.getAsDouble(), segments);
    }

    private TimeBase timeBaseOfStamps(Path file, Map<String, String> guessed, Progress progress)
            throws UnreadableException, IOException {
        ColumnStore column = stamps.get();
        column.finish();
        Optional<TimeBaseFinder.Found> found = exactStepSeconds.isPresent()
                ? TimeBaseFinder.exact(column, exactStepSeconds.getAsDouble(), breaks, progress)
                : TimeBaseFinder.find(column, stampResolutionSeconds, breaks, progress);
        if (found.isEmpty()) {
            throw new UnreadableException(
                    file, "", "all rows have the same time stamp", "export with more digits in the time column");
        }
        guessed.putAll(found.get().guessed());
        if (!(found.get().timeBase() instanceof StampedTimeBase)) {
            column.close();
        }
        return found.get().timeBase();
    }

    @Override
    public void close() throws IOException {
        if (finished) {
            return;
        }
        List<Samples> others = new ArrayList<>(stamps.stream().toList());
        placed.ifPresent(rows -> others.add(rows.samples()));
        Closing.all(values, others);
    }
}
