// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;

/**
 * Phase of the carrier across an interruption: straight lines through the starts of the healthy cycles before and
 * after are carried to its middle; what their cycle numbers differ by beyond a whole number is the residual. The
 * cycle next to the interruption is left out on both sides, because its edge may be that of the contact and not that
 * of the carrier.
 *
 * @param residualCycles between -0.5 and 0.5, positive where the carrier comes later than in step
 * @param uCycles standard uncertainty of it, from the scatter of the starts around the lines
 * @param verdict what it tells
 */
record CarrierPhase(double residualCycles, double uCycles, Verdict verdict) {
    /** What a phase tells. */
    enum Verdict {
        /** In step with before: the sensor ran on. */
        KEPT,
        /** Out of step: the sensor started anew. */
        BROKEN,
        /** The jitter or the length of the interruption lets neither be said. */
        UNTOLD
    }

    private static final int CYCLES_EACH_SIDE = 32;
    private static final int FEWEST_CYCLES = 6;
    /** A side this short takes its period from the other side. */
    private static final int FEWEST_BORROWING = 2;
    /** A residual this small counts as in step even with the steadiest carrier; chance alone gives it to 6 %. */
    private static final double IN_STEP_CYCLES = 0.03;
    /** With more than this, a third of all broken phases would look kept. */
    private static final double LARGEST_U_CYCLES = 0.05;
    /** The period on both sides must be the same to this share, or counting cycles across means nothing. */
    private static final double SAME_PERIOD = 0.005;

    /**
     * Measures the phase across an interruption.
     *
     * @return empty with too few healthy cycles beside it
     */
    static Optional<CarrierPhase> across(CycleTable cycles, double medianPeriodSeconds, Span gap) throws IOException {
        List<Double> startsBefore = before(cycles, gap.fromSeconds() - medianPeriodSeconds / 2, medianPeriodSeconds);
        List<Double> startsAfter = after(cycles, gap.toSeconds() + medianPeriodSeconds, medianPeriodSeconds);
        Optional<Side> before =
                Side.of(startsBefore).or(() -> Side.of(startsAfter).flatMap(it -> it.with(startsBefore)));
        Optional<Side> after =
                Side.of(startsAfter).or(() -> Side.of(startsBefore).flatMap(it -> it.with(startsAfter)));
        if (before.isEmpty() || after.isEmpty()) {
            return Optional.empty();
        }
        double middle = (gap.fromSeconds() + gap.toSeconds()) / 2;
        Side first = before.get();
        Side second = after.get();
        double difference = first.cyclesAt(middle) - second.cyclesAt(middle);
        double residual = difference - Math.rint(difference);
        double u = Math.hypot(first.uAt(middle), second.uAt(middle));
        boolean samePeriod = Math.abs(first.periodSeconds() / second.periodSeconds() - 1) < SAME_PERIOD;
        return Optional.of(new CarrierPhase(residual, u, samePeriod ? verdict(residual, u) : Verdict.UNTOLD));
    }

    private static Verdict verdict(double residual, double u) {
        double size = Math.abs(residual);
        if (u > LARGEST_U_CYCLES) {
            return Verdict.UNTOLD;
        }
        if (size <= Math.max(IN_STEP_CYCLES, 3 * u)) {
            return Verdict.KEPT;
        }
        return size >= Math.max(2 * IN_STEP_CYCLES, 6 * u) ? Verdict.BROKEN : Verdict.UNTOLD;
    }

    private static List<Double> before(CycleTable cycles, double untilSeconds, double period) throws IOException {
        List<Double> starts = new ArrayList<>();
        long index = CycleSearch.firstStartingFrom(cycles, untilSeconds) - 1;
        for (; index >= 0 && starts.size() < CYCLES_EACH_SIDE; index--) {
            Cycle cycle = cycles.get(index);
            boolean first = starts.isEmpty();
            if (first && (cycle.disturbed() || cycle.endSeconds() > untilSeconds)) {
                if (untilSeconds - cycle.startSeconds() > 4 * period) {
                    break;
                }
                continue;
            }
            if (cycle.disturbed() || (!first && starts.get(0) - cycle.startSeconds() > 1.5 * period)) {
                break;
            }
            starts.add(0, cycle.startSeconds());
        }
        return starts;
    }

    private static List<Double> after(CycleTable cycles, double fromSeconds, double period) throws IOException {
        List<Double> starts = new ArrayList<>();
        long index = CycleSearch.firstStartingFrom(cycles, fromSeconds);
        for (; index < cycles.size() && starts.size() < CYCLES_EACH_SIDE; index++) {
            Cycle cycle = cycles.get(index);
            boolean first = starts.isEmpty();
            if (first && cycle.disturbed()) {
                if (cycle.startSeconds() - fromSeconds > 4 * period) {
                    break;
                }
                continue;
            }
            if (cycle.disturbed() || (!first && cycle.startSeconds() - starts.get(starts.size() - 1) > 1.5 * period)) {
                break;
            }
            starts.add(cycle.startSeconds());
        }
        return starts;
    }

    /**
     * The line through the starts of one side: {@code originSeconds + number * periodSeconds}.
     *
     * @param scatterCycles standard deviation of the starts around the line, in periods
     * @param count number of starts
     * @param numberSquares sum of the squares of their numbers from the middle one, which the period rests on
     */
    private record Side(
            double originSeconds, double periodSeconds, double scatterCycles, int count, double numberSquares) {

        /** Empty with too few starts for a line of their own. */
        static Optional<Side> of(List<Double> starts) {
            if (starts.size() < FEWEST_CYCLES) {
                return Optional.empty();
            }
            SimpleRegression line = new SimpleRegression();
            double first = starts.get(0);
            for (int i = 0; i < starts.size(); i++) {
                line.addData(i, starts.get(i) - first);
            }
            double period = line.getSlope();
            return Optional.of(new Side(
                    first + line.getIntercept(),
                    period,
                    Math.sqrt(line.getMeanSquareError()) / period,
                    starts.size(),
                    line.getXSumSquares()));
        }

        /** The line of a short other side, as between two interruptions: this period through the mean of its starts. */
        Optional<Side> with(List<Double> starts) {
            if (starts.size() < FEWEST_BORROWING) {
                return Optional.empty();
            }
            double sum = 0;
            for (int i = 0; i < starts.size(); i++) {
                sum += starts.get(i) - i * periodSeconds;
            }
            return Optional.of(
                    new Side(sum / starts.size(), periodSeconds, scatterCycles, starts.size(), numberSquares));
        }

        double cyclesAt(double seconds) {
            return (seconds - originSeconds) / periodSeconds;
        }

        /** Standard uncertainty of the number of cycles at an instant: that of the line, and a walk of the period. */
        double uAt(double seconds) {
            double fromCentre = cyclesAt(seconds) - (count - 1) / 2.0;
            double ofLine = scatterCycles * Math.sqrt(1.0 / count + fromCentre * fromCentre / numberSquares);
            // Jitter that accumulates shows less within the line than beyond it.
            double ahead = Math.max(0, Math.abs(fromCentre) - count / 2.0);
            return Math.hypot(ofLine, scatterCycles * Math.sqrt(ahead / FEWEST_CYCLES));
        }
    }
}
