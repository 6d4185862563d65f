// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.io.IOException;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;

/**
 * The shorter ones of pulse and pause in the undisturbed cycles of a channel.
 *
 * @param cycles number of undisturbed cycles
 * @param shortestSeconds the shortest, infinite without a cycle
 * @param coarse number of cycles with fewer samples in it than make a good recording
 * @param unreadable number of cycles with fewer than two samples in it
 */
public record ShortPulses(long cycles, double shortestSeconds, long coarse, long unreadable) {
    private static final int LEAST_SAMPLES = 2;

    /** With a larger share of its cycles too short for the sample rate, a channel is recorded too coarsely. */
    private static final double LARGEST_SHARE = 0.05;

    /** Instants between samples are off by noise and rounding: a pulse of two samples may look this much shorter. */
    private static final double OFF = 0.25;

    /**
     * Counts them.
     *
     * @param stepSeconds distance of two samples
     * @param goodSamples samples that make a good recording
     */
    public static ShortPulses of(CycleTable table, double stepSeconds, double goodSamples) throws IOException {
        double coarseSeconds = (goodSamples - OFF) * stepSeconds;
        double unreadableSeconds = (LEAST_SAMPLES - OFF) * stepSeconds;
        long cycles = 0;
        long coarse = 0;
        long unreadable = 0;
        double shortest = Double.POSITIVE_INFINITY;
        CycleTable.Cursor cursor = table.cursor();
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            if (!cycle.disturbed()) {
                cycles++;
                double pause = cycle.periodSeconds() - cycle.pulseDurationSeconds();
                double least = Math.min(pause, cycle.pulseDurationSeconds());
                shortest = Math.min(shortest, least);
                coarse += least < coarseSeconds ? 1 : 0;
                unreadable += least < unreadableSeconds ? 1 : 0;
            }
        }
        return new ShortPulses(cycles, shortest, coarse, unreadable);
    }

    /** Whether no number can be given. A few short pulses are what the signal did; only many are the recording's fault. */
    public boolean areUnreadable() {
        return unreadable > LARGEST_SHARE * cycles;
    }

    /** Whether numbers carry no verdict. */
    boolean arePoor() {
        return coarse > LARGEST_SHARE * cycles;
    }
}
