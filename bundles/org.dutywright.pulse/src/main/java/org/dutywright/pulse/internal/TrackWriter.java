// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.internal.LevelLog.Told;

/** Writes down from which sample on which levels hold, from what the pulses of a channel told. */
final class TrackWriter {
    /** A change: first sample, low level, high level. */
    static final int WIDTH = 3;

    /** Within a pulse that droops its level is followed in steps of this share of the swing. */
    private static final double STEP = 0.04;

    private static final int MOST_STEPS = 12;

    /** A pulse is not cut into pieces shorter than this number of samples. */
    private static final int LEAST_PIECE = 16;

    private final LevelLog log;
    private final double swing;
    private final Side low;
    private final Side high;
    private final RecordSpill changes;

    TrackWriter(
            LevelLog log,
            Thresholds whole,
            LevelDrift lowDrift,
            LevelDrift highDrift,
            boolean lowDroops,
            boolean highDroops,
            RecordSpill changes)
            throws IOException {
        this.log = log;
        this.changes = changes;
        swing = whole.swing();
        low = new Side(new NeighbourMedian(log, false, lowDrift.nearEdges()), whole.low(), lowDroops);
        high = new Side(new NeighbourMedian(log, true, highDrift.nearEdges()), whole.high(), highDroops);
        low.join(high, whenFirstTold(low.walk, new NeighbourMedian(log, true, highDrift.nearEdges()), whole.high()));
        high.join(low, whenFirstTold(high.walk, new NeighbourMedian(log, false, lowDrift.nearEdges()), whole.low()));
    }

    /** Level of the other state where the level of one state is first told. */
    private double whenFirstTold(NeighbourMedian one, NeighbourMedian other, double otherwise) throws IOException {
        SpillLog.Reader<Told> reader = log.reader();
        double level = other.next() ? other.level() : otherwise;
        boolean first = true;
        for (Told told = reader.next(); told != null && !one.tells(told); told = reader.next()) {
            if (other.tells(told)) {
                level = first || other.next() ? other.level() : level;
                first = false;
            }
        }
        return level;
    }

    /**
     * A pulse with the level where it starts and where it ends.
     *
     * @param told the pulse
     * @param from level at its start
     * @param to level at its end
     */
    private record Levelled(Told told, double from, double to) {}

    void write() throws IOException {
        SpillLog.Reader<Told> reader = log.reader();
        Levelled before = null;
        double otherBefore = Double.NaN;
        for (Told told = reader.next(); told != null; told = reader.next()) {
            Levelled pulse = (told.high() ? high : low).at(told);
            if (before == null) {
                double other = (told.high() ? low : high).now();
                add(0L, told.high(), pulse.from, other);
                otherBefore = other;
            } else {
                boolean turned = before.told.high() != told.high();
                double otherAfter = turned ? pulse.from : otherBefore;
                along(before, otherBefore, otherAfter);
                otherBefore = turned ? before.to : otherBefore;
            }
            before = pulse;
        }
        if (before != null) {
            along(before, otherBefore, otherBefore);
        }
    }

    private void along(Levelled pulse, double otherBefore, double otherAfter) throws IOException {
        long samples = pulse.told.samples();
        double wanted = Math.ceil(Math.abs(pulse.to - pulse.from) / (STEP * swing));
        int steps = (int) Math.clamp(wanted, 1, Math.clamp(samples / LEAST_PIECE - 1, 1, MOST_STEPS));
        for (int i = 1; i <= steps; i++) {
            double own = pulse.from + (pulse.to - pulse.from) * i / steps;
            double other = 2 * i > steps ? otherAfter : otherBefore;
            add(pulse.told.startSample() + samples * i / (steps + 1), pulse.told.high(), own, other);
        }
    }

    private void add(long sample, boolean isHigh, double own, double other) throws IOException {
        changes.add((double) sample, isHigh ? other : own, isHigh ? own : other);
    }

    /** The level of one state beside the pulses. A pulse too short to show it is taken to move with the other state. */
    private static final class Side {
        private final NeighbourMedian walk;
        private final boolean droops;
        private Side other;
        private double level;
        private double otherLevel;
        private double trend;
        private boolean first = true;

        Side(NeighbourMedian walk, double level, boolean droops) throws IOException {
            this.walk = walk;
            this.droops = droops;
            this.level = level;
            if (walk.next()) {
                take();
            }
        }

        private void take() {
            level = walk.level();
            trend = droops ? walk.trend() : 0;
        }

        /**
         * Joins the two states.
         *
         * @param atFirst level of the other state where this one is first told
         */
        void join(Side opposite, double atFirst) {
            other = opposite;
            otherLevel = atFirst;
        }

        double now() {
            return level;
        }

        Levelled at(Told told) throws IOException {
            if (walk.tells(told)) {
                if (!first && walk.next()) {
                    take();
                }
                first = false;
                otherLevel = other.now();
                if (walk.steps()) {
                    return new Levelled(told, walk.before(), walk.after());
                }
                double half = trend * told.samples() / 2;
                return new Levelled(told, level - half, level + half);
            }
            double moved = level + other.now() - otherLevel;
            return new Levelled(told, moved, moved);
        }
    }
}
