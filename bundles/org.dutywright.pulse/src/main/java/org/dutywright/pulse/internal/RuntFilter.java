// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Iterator;

/**
 * Takes out pulses that crossed the hysteresis but did not come near the level that their state had in the pulses
 * before, seen from the levels of the moment: runts. Where most of the pulses that follow have the same level, or most of
 * those just before had it, the level shifts here and there is no runt. What lies on both sides of a runt becomes one
 * pulse again.
 */
final class RuntFilter implements PulseSink {
    /** Pulses of a state that must follow before a pulse is judged: a burst of up to four runts is no shift. */
    private static final int FOLLOWING = 7;

    private final PulseSink next;
    private final MarkLog runts;
    private final Track low;
    private final Track high;
    private final Deque<Pulse> waiting = new ArrayDeque<>();
    private Pulse previous;

    RuntFilter(States states, PulseSink next, MarkLog runts) {
        this.next = next;
        this.runts = runts;
        Thresholds levels = states.thresholds();
        boolean moves = states.track().moves();
        low = new Track(moves ? 0 : states.firstLow() - levels.low(), levels.lowLeave());
        high = new Track(moves ? 0 : states.firstHigh() - levels.high(), levels.highLeave());
    }

    @Override
    public void pulse(Pulse pulse) throws IOException {
        waiting.add(pulse);
        if (waiting.size() > 2 * FOLLOWING) {
            judge();
        }
    }

    private void judge() throws IOException {
        Pulse pulse = waiting.remove();
        Track track = pulse.high ? high : low;
        if (previous != null && pulse.endsWithEdge && track.isRunt(pulse, waiting.iterator())) {
            Pulse after = waiting.remove();
            runts.add(pulse.startSeconds, pulse.endSeconds, pulse.extreme, previous.high);
            previous.join(pulse, after);
            return;
        }
        track.follow(pulse);
        if (previous != null) {
            next.pulse(previous);
        }
        previous = pulse;
    }

    @Override
    public void excursion(Excursion excursion) throws IOException {
        next.excursion(excursion);
    }

    @Override
    public void segmentEnd() throws IOException {
        while (!waiting.isEmpty()) {
            judge();
        }
        if (previous != null) {
            next.pulse(previous);
            previous = null;
        }
        next.segmentEnd();
    }

    private static double extreme(Pulse pulse) {
        return pulse.extreme - pulse.expected;
    }

    /** The level of one state as it was in the last good pulses, from the level at which the edge finder acted. */
    private static final class Track {
        private static final int GOOD = 8;
        private static final int JUST_BEFORE = 4;

        private final double tolerance;
        /** How far the last good pulses went, whatever the levels of the moment; these may turn a pulse too early. */
        private final double[] reached = new double[JUST_BEFORE];

        private int nextReached;
        private final double[] good = new double[GOOD];
        private final double[] sorted = new double[GOOD];
        private int next;
        private double level;

        Track(double level, double tolerance) {
            this.level = level;
            this.tolerance = tolerance;
            Arrays.fill(good, level);
            Arrays.fill(reached, Double.NaN);
        }

        boolean isRunt(Pulse pulse, Iterator<Pulse> following) {
            if (!fallsShort(pulse, level)) {
                return false;
            }
            int seen = 0;
            int agreeing = 0;
            int alike = 0;
            while (following.hasNext()) {
                Pulse other = following.next();
                if (other.high == pulse.high) {
                    seen++;
                    agreeing += Math.abs(extreme(other) - extreme(pulse)) <= tolerance ? 1 : 0;
                    alike += Math.abs(other.extreme - pulse.extreme) <= tolerance ? 1 : 0;
                }
            }
            return 2 * Math.max(agreeing, alike) <= seen && !isAsBefore(pulse);
        }

        private boolean isAsBefore(Pulse pulse) {
            long alike = Arrays.stream(reached)
                    .filter(it -> Math.abs(it - pulse.extreme) <= tolerance)
                    .count();
            return alike > JUST_BEFORE / 2;
        }

        private boolean fallsShort(Pulse pulse, double from) {
            return pulse.high ? extreme(pulse) < from - tolerance : extreme(pulse) > from + tolerance;
        }

        void follow(Pulse pulse) {
            reached[nextReached] = pulse.extreme;
            nextReached = (nextReached + 1) % JUST_BEFORE;
            double seen = (pulse.levelSamples() > 0 ? pulse.level() : pulse.extreme) - pulse.expected;
            if (fallsShort(pulse, level)) {
                // the level has shifted: what was before no longer counts
                Arrays.fill(good, seen);
            }
            good[next] = seen;
            next = (next + 1) % GOOD;
            System.arraycopy(good, 0, sorted, 0, GOOD);
            FewValues.sort(sorted, GOOD);
            level = sorted[GOOD / 2];
        }
    }
}
