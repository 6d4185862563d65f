// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.util.Arrays;

/**
 * What the values themselves tell of the smallest step that the recorder resolves.
 *
 * @param distinct number of different values looked at
 * @param step smallest distance of two different values, 0 if there is none
 * @param grid whether all distances are whole multiples of the step
 */
record CodeStep(int distinct, double step, boolean grid) {
    /** With so many different values the smallest distance is taken for the code step. */
    private static final int ENOUGH = 16;

    /** Distances within this share of a step count as a whole multiple: what printed digits leave. */
    private static final double OFF_GRID = 0.02;

    /** Values closer than this share of their size are the same value, read from different digits. */
    private static final double SAME = 1e-12;

    static CodeStep among(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int distinct = 0;
        for (double value : sorted) {
            if (distinct == 0 || value - sorted[distinct - 1] > SAME * Math.abs(value)) {
                sorted[distinct++] = value;
            }
        }
        double step = Double.POSITIVE_INFINITY;
        for (int i = 1; i < distinct; i++) {
            step = Math.min(step, sorted[i] - sorted[i - 1]);
        }
        if (distinct < 2) {
            return new CodeStep(distinct, 0, false);
        }
        boolean grid = true;
        for (int i = 1; i < distinct && grid; i++) {
            double multiple = (sorted[i] - sorted[i - 1]) / step;
            grid = Math.abs(multiple - Math.rint(multiple)) <= OFF_GRID;
        }
        return new CodeStep(distinct, step, grid);
    }

    /** Whether there are too few different values to tell the code step from them alone. */
    boolean few() {
        return distinct < ENOUGH;
    }

    /** Standard deviation of the rounding to codes, if the values lie on a grid of more than two. */
    double rounding() {
        return distinct > 2 && grid ? step / Math.sqrt(12) : 0;
    }

    /**
     * The code step, or 0 where the values cannot tell it. Few different values are believed only if they lie on a grid
     * and the samples of a state use more than one of them: an ideal signal has few values as well, but no noise.
     *
     * @param noisy whether the samples within a state differ
     */
    double known(boolean noisy) {
        if (!few()) {
            return step;
        }
        return distinct > 2 && grid && noisy ? step : 0;
    }
}
