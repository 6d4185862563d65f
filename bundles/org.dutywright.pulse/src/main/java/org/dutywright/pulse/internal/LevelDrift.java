// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.MedianSketch;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.internal.LevelLog.Told;

/**
 * Whether the level of one state drifts so far that transitions must be timed at the level of the moment: it does if the
 * level at any pulse ({@link NeighbourMedian}) lies off that of the recording by more than the setting, half a code step,
 * and six standard deviations of what noise does to the median.
 *
 * @param high which state
 * @param nearEdges whether pulses count that are too short to show their level outside aberrations: where most are
 * @param moves whether it drifts
 */
record LevelDrift(boolean high, boolean nearEdges, boolean moves) {
    private static final double SIGMAS = 6;

    /** A median of absolute differences of neighbours times this is the standard deviation of one of them. */
    private static final double SD_OF_MEDIAN_DIFFERENCE = 1 / (0.674489750196082 * Math.sqrt(2));

    static LevelDrift of(LevelLog log, boolean high, States states, PulseSettings settings) throws IOException {
        long plateaus = 0;
        long near = 0;
        SpillLog.Reader<Told> reader = log.reader();
        for (Told told = reader.next(); told != null; told = reader.next()) {
            if (told.high() == high && told.plateau()) {
                plateaus++;
                near += told.nearEdges() ? 1 : 0;
            }
        }
        boolean nearEdges = 2 * near > plateaus;
        double least = Math.max(
                settings.get(PulseSettings.TRACK_FROM)
                        / 100
                        * states.thresholds().swing(),
                states.codeStep() / 2);
        double level = high ? states.thresholds().high() : states.thresholds().low();
        boolean moves = new Scan(log, high, nearEdges).isOff(level, least);
        return new LevelDrift(high, nearEdges, moves);
    }

    /** Two walks: how much neighbours differ, then how far the median strays. */
    private record Scan(LevelLog log, boolean high, boolean nearEdges) {
        private double scatter() throws IOException {
            MedianSketch differences = new MedianSketch();
            NeighbourMedian walk = new NeighbourMedian(log, high, nearEdges);
            double before = Double.NaN;
            while (walk.next()) {
                double difference = Math.abs(walk.own() - before);
                if (difference >= 0) {
                    differences.add(Math.max(difference, Double.MIN_NORMAL));
                }
                before = walk.own();
            }
            return differences.count() == 0 ? 0 : differences.median() * SD_OF_MEDIAN_DIFFERENCE;
        }

        boolean isOff(double level, double least) throws IOException {
            double scatter = scatter();
            NeighbourMedian walk = new NeighbourMedian(log, high, nearEdges);
            while (walk.next()) {
                int number = 2 * walk.reach() + 1;
                // a median of n normal values scatters by sqrt(pi / 2n), of one by 1
                double sd = scatter * Math.min(1, Math.sqrt(Math.PI / 2 / number));
                if (Math.abs(walk.level() - level) > Math.max(least, SIGMAS * sd)) {
                    return true;
                }
            }
            return false;
        }
    }
}
