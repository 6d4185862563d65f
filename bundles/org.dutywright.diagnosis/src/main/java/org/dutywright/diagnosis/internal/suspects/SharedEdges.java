// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.io.IOException;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;

/**
 * How many edges of one channel coincide with an edge of another. Channels with carriers of their own share edges
 * only by chance; wires that touch each other show the same pattern.
 *
 * @param edges number of edges of the first channel
 * @param shared those with an edge of the second within the tolerance
 * @param toleranceSeconds how near
 * @param expectedShare share that chance alone gives to carriers that are not synchronous
 */
record SharedEdges(long edges, long shared, double toleranceSeconds, double expectedShare) {

    double share() {
        return edges == 0 ? 0 : (double) shared / edges;
    }

    static SharedEdges count(
            CycleTable first, CycleTable second, double toleranceSeconds, double periodSeconds, Progress progress)
            throws IOException {
        EdgeWalk other = new EdgeWalk(second);
        EdgeWalk own = new EdgeWalk(first);
        double before = Double.NEGATIVE_INFINITY;
        double after = other.next();
        long edges = 0;
        long shared = 0;
        for (double edge = own.next(); !Double.isInfinite(edge); edge = own.next()) {
            if (edges % 4096 == 0) {
                progress.checkCancelled();
            }
            while (after < edge) {
                before = after;
                after = other.next();
            }
            edges++;
            if (Math.min(edge - before, after - edge) <= toleranceSeconds) {
                shared++;
            }
        }
        // Two edges a period, each with the tolerance on both sides.
        return new SharedEdges(edges, shared, toleranceSeconds, Math.min(1, 4 * toleranceSeconds / periodSeconds));
    }

    /** The edges of all cycles in order, then infinity. */
    private static final class EdgeWalk {
        private final CycleTable.Cursor cursor;
        private Cycle current;

        EdgeWalk(CycleTable cycles) throws IOException {
            cursor = cycles.cursor();
        }

        double next() throws IOException {
            if (current != null) {
                double end = current.startSeconds() + current.pulseDurationSeconds();
                current = null;
                return end;
            }
            current = cursor.next();
            return current == null ? Double.POSITIVE_INFINITY : current.startSeconds();
        }
    }
}
