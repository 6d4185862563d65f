// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.internal;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.EvenTimeBase;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Samples;
import org.dutywright.capture.Segment;
import org.dutywright.capture.StampedTimeBase;
import org.dutywright.capture.TimeBase;

/**
 * Decides from time stamps whether samples are evenly spaced and where gaps are.
 *
 * <ul>
 *   <li>A gap is where neighbours lie more than 1.5 steps (and the printed resolution) apart, or where the reader
 *       left out a row.
 *   <li>The step is the slope of the least-squares line through the stamps by their row, common to all segments.
 *       It becomes the simplest rate within the error of two stamps spread over all rows.
 *   <li>The base is even if in each segment all stamps lie within the printed resolution, or 2 % of a step where
 *       that is more, of a line with this step. Stamps that repeat because they were printed too coarsely
 *       therefore make an even base.
 *   <li>Else each sample keeps its stamp. A gap is then more than 3 median steps, and only if such places are rare
 *       (at most one in 200 rows): recordings that hold only what changed have long steps everywhere.
 * </ul>
 *
 * Memory does not depend on the number of stamps: beyond {@link #MAX_SEGMENTS} segments there are no gaps but one
 * stamped segment.
 */
public final class TimeBaseFinder {
    /** Largest number of segments. */
    public static final int MAX_SEGMENTS = 100_000;

    private static final double GAP_STEPS = 1.5;
    private static final double STAMPED_GAP_STEPS = 3;
    // no recorder is faster; the rate of a shorter step would leave the range of floating point
    private static final double SHORTEST_STEP_SECONDS = 1e-20;
    private static final double EVEN_STEPS = 0.02;
    // Printed in whole steps, neighbours still differ; a little above, for the rate is not exact.
    private static final double SAME_STAMP_STEPS = 1.001;
    private static final long FEWEST_ROWS_A_GAP = 10;
    private static final long FEWEST_ROWS_A_STAMPED_GAP = 200;

    private final Samples stamps;
    private final StampScan scan;
    private final double resolutionSeconds;
    private final Breaks breaks;
    private final Map<String, String> guessed = new LinkedHashMap<>();

    /**
     * What was found.
     *
     * @param timeBase an even one, or one that reads the stamps
     * @param guessed how it was found, for people
     */
    public record Found(TimeBase timeBase, Map<String, String> guessed) {}

    private TimeBaseFinder(Samples stamps, StampScan scan, double resolutionSeconds, Breaks breaks) {
        this.stamps = stamps;
        this.scan = scan;
        this.resolutionSeconds = resolutionSeconds;
        this.breaks = breaks;
    }

    /**
     * Decides.
     *
     * @param stamps one column of instants that never go backward
     * @param printedResolutionSeconds distance of two instants that the printed digits can tell apart
     * @param breaks where rows were left out
     * @return empty if the stamps do not advance
     */
    public static Optional<Found> find(
            Samples stamps, double printedResolutionSeconds, Breaks breaks, Progress progress) throws IOException {
        StampScan scan = new StampScan(stamps, breaks, progress);
        if (scan.count() < 2 || !(scan.stamp(scan.count() - 1) > scan.stamp(0))) {
            return Optional.empty();
        }
        double largest = Math.max(Math.abs(scan.stamp(0)), Math.abs(scan.stamp(scan.count() - 1)));
        // instants computed in floating point are off by some units in the last place, whatever was printed
        double resolution = Math.max(printedResolutionSeconds, 4 * Math.ulp(largest));
        return Optional.of(new TimeBaseFinder(stamps, scan, resolution, breaks).decide());
    }

    /**
     * Keeps stamps as they are, with gaps only where rows were left out.
     *
     * @param stamps one column of instants that never go backward
     * @param stepSeconds step of the clock that they were taken from
     * @param breaks where rows were left out; if there are too many to keep, there are no gaps
     * @return empty if the stamps do not advance
     */
    public static Optional<Found> exact(Samples stamps, double stepSeconds, Breaks breaks, Progress progress)
            throws IOException {
        StampScan scan = new StampScan(stamps, breaks, progress);
        if (scan.count() < 2 || !(scan.stamp(scan.count() - 1) > scan.stamp(0))) {
            return Optional.empty();
        }
        Optional<List<Segment>> split =
                breaks.tooMany() ? Optional.empty() : scan.split(Double.POSITIVE_INFINITY, MAX_SEGMENTS);
        List<Segment> segments = split.isPresent() ? split.get() : scan.whole();
        Map<String, String> guessed = new LinkedHashMap<>();
        guessed.put("time base", "uneven, each row keeps its time stamp");
        if (split.isEmpty()) {
            guessed.put("gaps", "none taken, because rows are left out all over the recording");
        } else if (segments.size() > 1) {
            guessed.put("gaps", segments.size() - 1 + ", where rows were left out");
        }
        TimeBase base = StampedTimeBase.of(stamps, segments, stepSeconds, stepSeconds / Math.sqrt(12));
        return Optional.of(new Found(base, guessed));
    }

    private Found decide() throws IOException {
        StampSurvey survey = StampSurvey.of(stamps, resolutionSeconds);
        double median = survey.medianStepSeconds();
        boolean coarse = resolutionSeconds > median / 4;
        double step = coarse ? survey.meanStepSeconds() : median;
        Optional<List<Segment>> segments = split(GAP_STEPS * step, FEWEST_ROWS_A_GAP);
        if (segments.isPresent()) {
            Optional<TimeBase> even = even(segments.get());
            if (even.isPresent()) {
                return new Found(even.get(), guessed);
            }
        }
        return new Found(stamped(median > SHORTEST_STEP_SECONDS ? median : step), guessed);
    }

    private Optional<TimeBase> even(List<Segment> segments) throws IOException {
        double seconds = 0;
        for (Segment segment : segments) {
            seconds += scan.stamp(segment.endSample() - 1) - segment.startSeconds();
        }
        if (!(seconds > 0)) {
            return Optional.empty();
        }
        long steps = scan.count() - segments.size();
        double step = seconds / steps;
        step += scan.distances(segments, step).stepErrorSeconds();
        if (!(step > SHORTEST_STEP_SECONDS)) {
            return Optional.empty();
        }
        double off = scan.distances(segments, step).halfRangeSeconds();
        if (off > Math.max(resolutionSeconds, EVEN_STEPS * step)) {
            return Optional.empty();
        }
        double relativeError = Math.max(resolutionSeconds, off) * Math.sqrt(segments.size()) / seconds;
        // below a part in 10^9 no clock is known; never so much that the last sample moves by a hundredth of a step
        double floor = Math.min(1e-9, 0.01 / steps);
        double rate = SimplestRate.of(1 / step, Math.max(relativeError, floor));
        sayEven(rate, relativeError, segments.size() - 1);
        return Optional.of(EvenTimeBase.of(rate, segments));
    }

    private void sayEven(double rate, double relativeError, int gaps) {
        guessed.put("time base", "even, found from the time column");
        String error = relativeError > 1e-4 ? String.format(Locale.ROOT, " ± %.2g %%", 100 * relativeError) : "";
        guessed.put("sample rate", rate + " Hz" + error);
        if (resolutionSeconds * rate > SAME_STAMP_STEPS) {
            guessed.put(
                    "time stamps",
                    "printed too coarsely to tell neighbours apart; the step is that of a line through all rows");
        }
        if (gaps > 0) {
            guessed.put("gaps", gaps + ", where rows lie more than 1.5 steps apart");
        }
    }

    private TimeBase stamped(double step) throws IOException {
        guessed.put("time base", "uneven, each row keeps its time stamp");
        Optional<List<Segment>> segments = split(STAMPED_GAP_STEPS * step, FEWEST_ROWS_A_STAMPED_GAP);
        if (segments.isEmpty()) {
            guessed.put("gaps", "none taken, because long steps occur all over the recording");
        } else if (segments.get().size() > 1) {
            guessed.put("gaps", segments.get().size() - 1 + ", where rows lie more than 3 typical steps apart");
        }
        List<Segment> kept = segments.isPresent() ? segments.get() : scan.whole();
        return StampedTimeBase.of(stamps, kept, step, resolutionSeconds / Math.sqrt(12));
    }

    private Optional<List<Segment>> split(double gapSeconds, long fewestRowsAGap) throws IOException {
        if (breaks.tooMany()) {
            return Optional.empty();
        }
        long most = Math.min(MAX_SEGMENTS, 1 + breaks.count() + Math.max(1, scan.count() / fewestRowsAGap));
        return scan.split(gapSeconds + resolutionSeconds, most);
    }
}
