// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.io.IOException;
import java.util.Optional;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.dutywright.pulse.internal.Words;

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
    /** A period with fewer samples leaves a pulse of a quarter of it with fewer than five. */
    private static final double FAST_SAMPLES = 20;

    private static final int LEAST_CYCLES = 20;

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

    /**
     * Why no number can be given, empty if it can. A few short pulses are what the signal did; only many are the
     * recording's fault. An input that floats makes an edge every few samples, and no cycle like the one before.
     *
     * @param allCycles number of cycles, disturbed ones included
     * @param periodSamples median period in samples
     */
    public Optional<String> unreadable(long allCycles, double periodSamples) {
        if (unreadable > LARGEST_SHARE * cycles) {
            return Optional.of(Words.of(
                    "%d of %d cycles have fewer than 2 samples in pulse or pause, so that a faster carrier would look the"
                            + " same; record at a higher sample rate",
                    unreadable, cycles));
        }
        if (allCycles >= LEAST_CYCLES && 2 * cycles < allCycles && periodSamples < FAST_SAMPLES) {
            return Optional.of(Words.of(
                    "half of the cycles have %.0f samples or fewer and most are unlike the others: the input floats, or the"
                            + " sample rate is too low; clip it on, or record at a higher sample rate",
                    periodSamples));
        }
        return Optional.empty();
    }

    /** Whether numbers carry no verdict. */
    boolean arePoor() {
        return coarse > LARGEST_SHARE * cycles;
    }
}
