// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.Optional;

/**
 * What the samples of one cycle show beside its edges.
 *
 * @param meanSquare average of the squared signal over the cycle, the samples joined by straight lines
 * @param input the cycle as the module's input sees it, empty where its thresholds are not known
 */
public record CycleShape(double meanSquare, Optional<InputCycle> input) {
    /**
     * A cycle at the thresholds of the module's input: a rising edge counts where the signal passes the rising threshold, a
     * falling one where it passes the falling one.
     *
     * @param periodSeconds from one such edge into the active level to the next
     * @param pulseDurationSeconds from an edge into the active level to the edge out of it
     * @param startSecondsPerUnit by how much one unit of error of the threshold moves the edge into the active level
     * @param switchSecondsPerUnit the same for the edge out of it
     * @param startBendSeconds how much later the edge into the active level may be than the straight line between its samples
     *     tells, from what the samples around show
     * @param switchBendSeconds the same for the edge out of it
     */
    public record InputCycle(
            double periodSeconds,
            double pulseDurationSeconds,
            double startSecondsPerUnit,
            double switchSecondsPerUnit,
            double startBendSeconds,
            double switchBendSeconds) {
        /** The input does not see the three edges of the cycle, each once. */
        public static final InputCycle UNSEEN = new InputCycle(Double.NaN, Double.NaN, 0, 0);

        /** Edges that are straight lines. */
        public InputCycle(
                double periodSeconds,
                double pulseDurationSeconds,
                double startSecondsPerUnit,
                double switchSecondsPerUnit) {
            this(periodSeconds, pulseDurationSeconds, startSecondsPerUnit, switchSecondsPerUnit, 0, 0);
        }

        /** Whether the input sees the three edges of the cycle, each once. */
        public boolean isSeen() {
            return pulseDurationSeconds > 0 && pulseDurationSeconds < periodSeconds;
        }

        /** Pulse duration as a share of the period in percent. */
        public double dutyPercent() {
            return 100 * pulseDurationSeconds / periodSeconds;
        }
    }
}
