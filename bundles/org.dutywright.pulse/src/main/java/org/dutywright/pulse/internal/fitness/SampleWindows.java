// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

/** Short stretches of neighbouring samples, spread over a recording. */
public final class SampleWindows {
    private final double[] values;
    private final int[] starts;

    private SampleWindows(double[] values, int[] starts) {
        this.values = values;
        this.starts = starts;
    }

    /**
     * Takes over samples.
     *
     * @param values the samples of all stretches, one after the other
     * @param starts index of the first sample of each stretch, in order
     */
    public static SampleWindows of(double[] values, int[] starts) {
        return new SampleWindows(values, starts);
    }

    /** The samples of all stretches, not to be changed. */
    double[] values() {
        return values;
    }

    /** Number of stretches. */
    int count() {
        return starts.length;
    }

    /** Index of the first sample of a stretch. */
    int from(int window) {
        return starts[window];
    }

    /** Index after the last sample of a stretch. */
    int to(int window) {
        return window + 1 < starts.length ? starts[window + 1] : values.length;
    }
}
