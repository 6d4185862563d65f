// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

import java.util.Arrays;

/** Points of a channel that are joined by a line. */
public final class Run {
    private final double[] seconds;
    private final double[] values;

    private Run(double[] seconds, double[] values) {
        this.seconds = seconds;
        this.values = values;
    }

    /** Number of points. */
    public int count() {
        return seconds.length;
    }

    /** Instants of the points, never falling; a copy. */
    public double[] seconds() {
        return seconds.clone();
    }

    /** Values of the points; a copy. */
    public double[] values() {
        return values.clone();
    }

    /** Gathers the points of a run. */
    static final class Builder {
        private double[] seconds;
        private double[] values;
        private int count;

        Builder(int expected) {
            seconds = new double[Math.max(2, expected)];
            values = new double[Math.max(2, expected)];
        }

        boolean isEmpty() {
            return count == 0;
        }

        void add(double atSeconds, double value) {
            if (count == seconds.length) {
                seconds = Arrays.copyOf(seconds, 2 * count);
                values = Arrays.copyOf(values, 2 * count);
            }
            seconds[count] = atSeconds;
            values[count] = value;
            count++;
        }

        /** Adds both ends of a column, the one first that lies nearer to where the line comes from. */
        void addColumn(double atSeconds, double min, double max) {
            double from = count == 0 ? min : values[count - 1];
            boolean upwards = Math.abs(from - min) <= Math.abs(from - max);
            add(atSeconds, upwards ? min : max);
            add(atSeconds, upwards ? max : min);
        }

        Run build() {
            return new Run(Arrays.copyOf(seconds, count), Arrays.copyOf(values, count));
        }
    }
}
