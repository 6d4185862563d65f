// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.io.IOException;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.internal.agreement.PairWalk;
import org.dutywright.diagnosis.internal.agreement.PairedTravel;
import org.dutywright.diagnosis.internal.agreement.TravelChannel;

/** How the travel of two channels differs over a recording; one pass, constant memory. */
final class TravelDifference implements PairWalk.PairListener {
    private final SummaryStatistics first = new SummaryStatistics();
    private final SummaryStatistics second = new SummaryStatistics();
    private final SummaryStatistics difference = new SummaryStatistics();
    private final SimpleRegression overTravel = new SimpleRegression();
    private final TravelProfile overFirst = new TravelProfile();
    private final TravelProfile overSecond = new TravelProfile();

    private TravelDifference() {}

    static TravelDifference of(TravelChannel first, TravelChannel second, Progress progress) throws IOException {
        TravelDifference found = new TravelDifference();
        PairWalk.walk(first, second, found, progress);
        return found;
    }

    @Override
    public void paired(PairedTravel travel) {
        double middle = (travel.firstPercent() + travel.secondPercent()) / 2;
        first.addValue(travel.firstPercent());
        second.addValue(travel.secondPercent());
        difference.addValue(travel.differencePercent());
        overTravel.addData(middle, travel.differencePercent());
        overFirst.add(travel.firstPercent(), travel.differencePercent());
        overSecond.add(travel.secondPercent(), travel.differencePercent());
    }

    @Override
    public void broken() {
        // A break changes no sum: each pair stands for itself.
    }

    long count() {
        return difference.getN();
    }

    /** Mean of first minus second, in percent of travel. */
    double meanPercent() {
        return difference.getMean();
    }

    double scatterPercent() {
        return difference.getStandardDeviation();
    }

    /** Root of the mean square of the difference. */
    double rmsPercent() {
        return Math.sqrt(difference.getSumsq() / difference.getN());
    }

    /** How far the first channel moved, in percent of travel. */
    double firstRangePercent() {
        return first.getMax() - first.getMin();
    }

    double secondRangePercent() {
        return second.getMax() - second.getMin();
    }

    double firstScatterPercent() {
        return first.getStandardDeviation();
    }

    double secondScatterPercent() {
        return second.getStandardDeviation();
    }

    /** Change of the difference over the whole travel, in percent of travel; 0 where nothing moved. */
    double changeOverTravelPercent() {
        double slope = overTravel.getSlope();
        return Double.isNaN(slope) ? 0 : 100 * slope;
    }

    /** Scatter of the difference around the straight line over travel. */
    double scatterAroundLinePercent() {
        if (difference.getN() < 3 || Double.isNaN(overTravel.getSlope())) {
            return scatterPercent();
        }
        return Math.sqrt(overTravel.getMeanSquareError());
    }

    /** The difference over the travel that the first channel reports. */
    TravelProfile overFirst() {
        return overFirst;
    }

    /** The difference over the travel that the second channel reports. */
    TravelProfile overSecond() {
        return overSecond;
    }
}
