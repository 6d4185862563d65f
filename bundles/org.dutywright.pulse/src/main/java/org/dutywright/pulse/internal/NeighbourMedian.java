// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.internal.LevelLog.Told;

/**
 * The level of one state at each of its pulses that tell it: the median of the plateaus of the pulse and its neighbours,
 * four on either side. A median follows a step and a steady drift without lag and leaves out up to four pulses in a row
 * that are off, as runts are. Near an end of the recording as many neighbours are taken as there are on both sides. Where
 * the level steps within a pulse, that pulse starts at the level of those before it and ends at that of those after it.
 */
final class NeighbourMedian {
    /** Neighbours on either side. */
    static final int REACH = 4;

    /** A pulse with less than this share of a step in it, or all but this share, has no step. */
    private static final double BETWEEN = 0.05;

    /** Four neighbours that differ by more than this share of a step make it no step but a drift. */
    private static final double STEADY = 0.25;

    private static final int SIZE = 2 * REACH + 1;

    private final SpillLog.Reader<Told> reader;
    private final boolean high;
    private final boolean nearEdges;
    private final double[] levels = new double[SIZE];
    private final double[] trends = new double[SIZE];
    private final double[] sorted = new double[SIZE];
    private long read;
    private long at = -1;
    private boolean ended;

    /**
     * A walk from the first pulse on.
     *
     * @param high which state
     * @param nearEdges whether pulses count that are too short to show their level outside aberrations
     */
    NeighbourMedian(LevelLog log, boolean high, boolean nearEdges) {
        reader = log.reader();
        this.high = high;
        this.nearEdges = nearEdges;
    }

    /** Whether a pulse tells the level of the state. */
    boolean tells(Told told) {
        return told.high() == high && told.plateau() && (nearEdges || !told.nearEdges());
    }

    /** Goes to the next pulse that tells; false after the last one. */
    boolean next() throws IOException {
        while (!ended && read <= at + 1 + REACH) {
            Told told = reader.next();
            if (told == null) {
                ended = true;
            } else if (tells(told)) {
                levels[(int) (read % SIZE)] = told.level();
                trends[(int) (read % SIZE)] = told.trend();
                read++;
            }
        }
        if (at + 1 >= read) {
            return false;
        }
        at++;
        return true;
    }

    /** Neighbours on either side of the present pulse that are looked at. */
    int reach() {
        return (int) Math.min(REACH, Math.min(at, read - 1 - at));
    }

    /** Level of the present pulse by itself. */
    double own() {
        return levels[(int) (at % SIZE)];
    }

    /** Level at the present pulse. */
    double level() {
        return median(levels, -reach(), reach());
    }

    /** Whether the level steps within the present pulse: before and after it is steady, and it lies between. */
    boolean steps() {
        if (reach() < REACH) {
            return false;
        }
        double step = after() - before();
        double share = (own() - before()) / step;
        double unsteady = Math.max(spread(-REACH), spread(1));
        return share > BETWEEN && share < 1 - BETWEEN && unsteady < STEADY * Math.abs(step);
    }

    /** Level of the neighbours before the present pulse. */
    double before() {
        return median(levels, -REACH, -1);
    }

    /** Level of the neighbours after the present pulse. */
    double after() {
        return median(levels, 1, REACH);
    }

    private double spread(int from) {
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (int i = from; i < from + REACH; i++) {
            double value = levels[(int) ((at + i) % SIZE)];
            min = Math.min(min, value);
            max = Math.max(max, value);
        }
        return max - min;
    }

    /** Trend at the present pulse, a sample. */
    double trend() {
        return median(trends, -reach(), reach());
    }

    private double median(double[] ring, int from, int to) {
        int count = to - from + 1;
        int place = (int) Math.floorMod(at + from, (long) SIZE);
        for (int i = 0; i < count; i++) {
            sorted[i] = ring[place];
            place = place + 1 == SIZE ? 0 : place + 1;
        }
        FewValues.sort(sorted, count);
        return (sorted[(count - 1) / 2] + sorted[count / 2]) / 2;
    }
}
