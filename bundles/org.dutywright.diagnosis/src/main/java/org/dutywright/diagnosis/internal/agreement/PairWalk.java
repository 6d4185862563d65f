// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.agreement;

import java.io.IOException;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;

/**
 * Walks once over two channels and pairs their travel at the same instants: the middles of the first channel's
 * cycles, with the second channel's travel interpolated linearly between the middles of the two cycles around. The
 * interpolation error is at most the change of speed within a cycle times a quarter of its period. Nothing is paired
 * over a disturbed cycle, over a gap in the recording, or over more than {@value #MAX_PERIODS} median periods.
 * Memory does not depend on the number of cycles.
 */
public final class PairWalk {
    /** Longest stretch that is interpolated over or counts as unbroken, in median periods. */
    static final double MAX_PERIODS = 2;

    private static final int CANCEL_INTERVAL = 4096;

    private final TravelChannel first;
    private final TravelChannel second;
    private final PairListener listener;
    private CycleTable.Cursor others;
    private Cycle before;
    private Cycle after;
    private double lastPairedSeconds = Double.NEGATIVE_INFINITY;

    private PairWalk(TravelChannel first, TravelChannel second, PairListener listener) {
        this.first = first;
        this.second = second;
        this.listener = listener;
    }

    /** Takes what the walk finds, in time order. */
    public interface PairListener {
        /** Both channels have a travel; unbroken since the last call unless {@link #broken} came between. */
        void paired(PairedTravel travel);

        /** What follows does not continue what came before. Also called once after the last pair. */
        void broken();
    }

    /** Walks from the first to the last cycle. */
    public static void walk(TravelChannel first, TravelChannel second, PairListener listener, Progress progress)
            throws IOException {
        new PairWalk(first, second, listener).run(progress);
    }

    private void run(Progress progress) throws IOException {
        others = second.cycles().cursor();
        after = others.next();
        CycleTable.Cursor cursor = first.cycles().cursor();
        long seen = 0;
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            if (seen++ % CANCEL_INTERVAL == 0) {
                progress.checkCancelled();
            }
            pair(cycle);
        }
        listener.broken();
    }

    private void pair(Cycle cycle) throws IOException {
        double seconds = cycle.middleSeconds();
        while (after != null && after.middleSeconds() < seconds) {
            before = after;
            after = others.next();
        }
        boolean unbroken = seconds - lastPairedSeconds <= MAX_PERIODS * first.medianPeriodSeconds();
        if (cycle.disturbed() || !interpolable(seconds)) {
            endStretch();
            return;
        }
        if (!unbroken) {
            endStretch();
        }
        lastPairedSeconds = seconds;
        listener.paired(new PairedTravel(
                seconds,
                cycle.periodSeconds(),
                first.travel().percentAt(cycle.dutyPercent()),
                second.travel().percentAt(dutyAt(seconds))));
    }

    private void endStretch() {
        if (lastPairedSeconds != Double.NEGATIVE_INFINITY) {
            listener.broken();
            lastPairedSeconds = Double.NEGATIVE_INFINITY;
        }
    }

    private boolean interpolable(double seconds) {
        if (after == null || after.disturbed()) {
            return false;
        }
        if (after.middleSeconds() == seconds) {
            return true;
        }
        return before != null
                && !before.disturbed()
                && after.index() == before.index() + 1
                && after.middleSeconds() - before.middleSeconds() <= MAX_PERIODS * second.medianPeriodSeconds();
    }

    private double dutyAt(double seconds) {
        if (after.middleSeconds() == seconds) {
            return after.dutyPercent();
        }
        double share = (seconds - before.middleSeconds()) / (after.middleSeconds() - before.middleSeconds());
        return before.dutyPercent() + share * (after.dutyPercent() - before.dutyPercent());
    }
}
