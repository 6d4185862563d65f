// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.io.IOException;
import java.util.Optional;
import org.apache.commons.math3.stat.descriptive.rank.PSquarePercentile;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;

/**
 * One pass over the cycles of a channel for the duty nearest to, or farthest outside, a band. Only undisturbed
 * cycles count. Also estimates the standard uncertainty of the duty of one cycle from the second differences of
 * three cycles in a row, which cancel steady movement: their standard deviation is sqrt(6) times that of one cycle
 * (closed form for independent cycles), taken by the median of their absolute values so that single jumps do not count.
 */
final class DutyScan {
    /** Median of the absolute value of a standard normal variable. */
    private static final double MEDIAN_ABSOLUTE_NORMAL = 0.674489750196082;

    private static final int CANCEL_INTERVAL = 4096;

    private final double lowerPercent;
    private final double upperPercent;
    private final PSquarePercentile secondDifferences = new PSquarePercentile(50);
    private Cycle worst;
    private double worstMargin = Double.POSITIVE_INFINITY;
    private long outside;
    private long undisturbed;
    private Cycle previous;
    private Cycle beforePrevious;

    private DutyScan(double lowerPercent, double upperPercent) {
        this.lowerPercent = lowerPercent;
        this.upperPercent = upperPercent;
    }

    /**
     * What the pass found.
     *
     * @param worst the cycle with the smallest margin to the band
     * @param outside number of cycles outside the band
     * @param undisturbed number of cycles looked at
     * @param cycleScatterPercent standard deviation of the duty of one cycle without steady movement, 0 for fewer
     *     than three cycles in a row
     */
    record Found(Cycle worst, long outside, long undisturbed, double cycleScatterPercent) {}

    /**
     * Runs the pass.
     *
     * @param lowerPercent lower end of the band, minus infinity if there is none
     * @param upperPercent upper end of the band, infinity if there is none
     * @return empty without an undisturbed cycle
     */
    static Optional<Found> scan(CycleTable cycles, double lowerPercent, double upperPercent, Progress progress)
            throws IOException {
        DutyScan scan = new DutyScan(lowerPercent, upperPercent);
        CycleTable.Cursor cursor = cycles.cursor();
        long seen = 0;
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            if (seen++ % CANCEL_INTERVAL == 0) {
                progress.checkCancelled();
            }
            scan.take(cycle);
        }
        return scan.found();
    }

    private void take(Cycle cycle) {
        if (cycle.disturbed()) {
            previous = null;
            beforePrevious = null;
            return;
        }
        double duty = cycle.dutyPercent();
        double margin = Math.min(duty - lowerPercent, upperPercent - duty);
        undisturbed++;
        if (margin < 0) {
            outside++;
        }
        if (margin < worstMargin) {
            worstMargin = margin;
            worst = cycle;
        }
        if (beforePrevious != null) {
            secondDifferences.increment(Math.abs(beforePrevious.dutyPercent() - 2 * previous.dutyPercent() + duty));
        }
        beforePrevious = previous;
        previous = cycle;
    }

    private Optional<Found> found() {
        if (worst == null) {
            return Optional.empty();
        }
        double median = secondDifferences.getN() == 0 ? 0 : secondDifferences.getResult();
        return Optional.of(new Found(worst, outside, undisturbed, median / MEDIAN_ABSOLUTE_NORMAL / Math.sqrt(6)));
    }
}
