// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Samples;
import org.dutywright.capture.Segment;

/** Passes over all time stamps, a block at a time. */
final class StampScan {
    private static final int BLOCK = 1 << 15;

    private final Samples stamps;
    private final Breaks breaks;
    private final Progress progress;
    private final double[] block = new double[BLOCK];

    /**
     * Makes a scan.
     *
     * @param stamps one column of instants that never go backward, at least one
     * @param breaks where rows were left out
     */
    StampScan(Samples stamps, Breaks breaks, Progress progress) {
        this.stamps = stamps;
        this.breaks = breaks;
        this.progress = progress;
    }

    long count() {
        return stamps.sampleCount();
    }

    double stamp(long index) throws IOException {
        double[] one = new double[1];
        stamps.read(0, index, one, 0, 1);
        return one[0];
    }

    /** All stamps as one segment. */
    List<Segment> whole() throws IOException {
        return List.of(new Segment(0, count(), stamp(0)));
    }

    /**
     * Splits where neighbours lie farther apart than a gap and where rows were left out.
     *
     * @param mostSegments if there would be more, nothing is returned
     */
    Optional<List<Segment>> split(double gapSeconds, long mostSegments) throws IOException {
        List<Segment> segments = new ArrayList<>();
        long start = 0;
        double startSeconds = stamp(0);
        double before = startSeconds;
        Breaks.Walk walk = breaks.walk();
        for (long first = 0; first < count(); first += BLOCK) {
            int here = read(first, BLOCK);
            for (int i = 0; i < here; i++) {
                boolean broken = walk.isBefore(first + i);
                if (broken || block[i] - before > gapSeconds) {
                    segments.add(new Segment(start, first + i - start, startSeconds));
                    if (segments.size() >= mostSegments) {
                        return Optional.empty();
                    }
                    start = first + i;
                    startSeconds = block[i];
                }
                before = block[i];
            }
        }
        segments.add(new Segment(start, count() - start, startSeconds));
        return Optional.of(segments);
    }

    /**
     * How far stamps lie from lines of a common step that start with the segments.
     *
     * @param halfRangeSeconds half of the range of the distances in the worst segment
     * @param stepErrorSeconds what the least-squares slope, common to all segments, has more than the step
     */
    record Distances(double halfRangeSeconds, double stepErrorSeconds) {}

    Distances distances(List<Segment> segments, double step) throws IOException {
        double worst = 0;
        double products = 0;
        double squares = 0;
        for (Segment segment : segments) {
            double lowest = 0;
            double highest = 0;
            double middle = (segment.sampleCount() - 1) / 2.0;
            for (long first = segment.firstSample(); first < segment.endSample(); first += BLOCK) {
                int here = read(first, segment.endSample() - first);
                for (int i = 0; i < here; i++) {
                    double steps = (double) (first - segment.firstSample()) + i;
                    double distance = block[i] - (segment.startSeconds() + steps * step);
                    lowest = Math.min(lowest, distance);
                    highest = Math.max(highest, distance);
                    products += (steps - middle) * distance;
                }
            }
            worst = Math.max(worst, (highest - lowest) / 2);
            squares += (double) segment.sampleCount() * (4 * middle * (middle + 1)) / 12;
        }
        return new Distances(worst, products / squares);
    }

    private int read(long first, long most) throws IOException {
        progress.checkCancelled();
        int here = (int) Math.min(Math.min(BLOCK, most), count() - first);
        stamps.read(0, first, block, 0, here);
        return here;
    }
}
