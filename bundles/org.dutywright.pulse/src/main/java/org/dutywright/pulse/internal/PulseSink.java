// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/** Takes what the edge finder finds, in time order. */
interface PulseSink {
    /**
     * Takes a complete pulse.
     *
     * @param pulse belongs to the receiver from now on
     */
    void pulse(Pulse pulse) throws IOException;

    /**
     * Takes an excursion: the signal left its state for some samples and returned without a transition. It comes before
     * the pulse that it lies in.
     *
     * @param excursion what was seen
     */
    default void excursion(Excursion excursion) throws IOException {}

    /**
     * Takes samples of a state outside transitions and their aberrations, before the pulse that they are in is complete.
     *
     * @param high whether they are in the high state
     * @param values holds them
     * @param from index of the first one
     * @param to index after the last one
     */
    default void plateau(boolean high, double[] values, int from, int to) {}

    /** Told after the last pulse of a segment; the next pulse lies after a gap. */
    default void segmentEnd() throws IOException {}

    /**
     * Where a signal left its state and returned.
     *
     * @param high whether the state that it left is the high one
     * @param pulseStartSeconds start of the pulse that it lies in
     * @param afterEdge whether that pulse starts with a transition
     * @param startSeconds where it left
     * @param endSeconds where it was back
     * @param peak sample that was furthest away
     */
    record Excursion(
            boolean high,
            double pulseStartSeconds,
            boolean afterEdge,
            double startSeconds,
            double endSeconds,
            double peak) {}
}
