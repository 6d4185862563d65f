// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Points of a channel that are joined by a line. */
public final class Run {
    /** Of the whole range; noise on a state makes no strokes of that length. */
    private static final double STROKE_SHARE = 1.0 / 3;

    private static final int STROKE_ROOM_PIXELS = 6;

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

    /**
     * Whether the strokes between the states stand so far apart that a thick line leaves the gaps between them to be
     * seen, when the run is drawn that wide.
     */
    public boolean isSparse(int widthPixels) {
        double lowest = Arrays.stream(values).min().orElse(0);
        double highest = Arrays.stream(values).max().orElse(0);
        double stroke = (highest - lowest) * STROKE_SHARE;
        long strokes = IntStream.range(1, values.length)
                .filter(i -> Math.abs(values[i] - values[i - 1]) > stroke)
                .count();
        return strokes * STROKE_ROOM_PIXELS < widthPixels;
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
