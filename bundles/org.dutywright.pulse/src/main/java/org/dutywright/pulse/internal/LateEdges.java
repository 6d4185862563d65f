// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import org.dutywright.pulse.MedianSketch;
import org.dutywright.pulse.internal.MarkLog.Mark;

/**
 * Edges that are slow where most are not. Such an edge begins when the others would, so its 50 % instant is late, by less
 * than it takes longer than they do. The odd period and duty that come of it belong to the slow edge and are no events of
 * their own. Where all edges are slow, none is late.
 */
final class LateEdges {
    private LateEdges() {}

    /** Writes them down, with the time by which each may be late. */
    static void find(PulseLog log, EventLimits limits, MarkLog late) throws IOException {
        MedianSketch low = new MedianSketch();
        MedianSketch high = new MedianSketch();
        boolean any = false;
        SpillLog.Reader<Pulse> reader = log.reader(1);
        for (Pulse pulse = reader.next(); pulse != null; pulse = reader.next()) {
            if (pulse.startsWithEdge && pulse.edgeSeconds >= 0) {
                (pulse.high ? high : low).add(pulse.edgeSeconds);
                any |= limits.slow(pulse);
            }
        }
        if (any) {
            write(log, limits, low, high, late);
        }
    }

    private static void write(PulseLog log, EventLimits limits, MedianSketch low, MedianSketch high, MarkLog late)
            throws IOException {
        SpillLog.Reader<Pulse> reader = log.reader(1);
        for (Pulse pulse = reader.next(); pulse != null; pulse = reader.next()) {
            if (pulse.startsWithEdge && limits.slow(pulse)) {
                double most = pulse.edgeSeconds - (pulse.high ? high : low).median();
                if (most > 0) {
                    late.add(pulse.startSeconds, pulse.startSeconds, most, pulse.high);
                }
            }
        }
    }

    /** Walks over them beside the cycles. */
    static final class Walk {
        private final SpillLog.Reader<Mark> reader;
        private final Deque<Mark> near = new ArrayDeque<>();
        private Mark next;

        Walk(MarkLog late) throws IOException {
            reader = late.reader();
            next = reader.next();
        }

        /** By how much an edge in a span is late at most, 0 where none is; starts and ends must not fall. */
        double latest(double fromSeconds, double toSeconds) throws IOException {
            for (; next != null && next.startSeconds() <= toSeconds; next = reader.next()) {
                near.add(next);
            }
            while (!near.isEmpty() && near.element().startSeconds() < fromSeconds) {
                near.remove();
            }
            double latest = 0;
            for (Mark mark : near) {
                latest = Math.max(latest, mark.value());
            }
            return latest;
        }
    }
}
