// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.util.Arrays;

/**
 * By how much the chord between two samples may miss the instant at which a signal passes a level between them, told by one
 * more sample to either side. The lines through the two samples before and through the two after are carried on into the
 * step, no further than its ends. A signal that only bends one way lies between the chord and the nearer of both; one that
 * turns its bend, such as a switch between two flat states, lies between both, in their middle on the average over all places.
 */
final class InputBend {
    private final double[] seconds = new double[4];
    private final double[] values = new double[4];

    InputBend() {
        clear();
    }

    /** Nothing came before. */
    void clear() {
        Arrays.fill(seconds, Double.NaN);
    }

    /** Takes the next sample. */
    void add(double instant, double value) {
        System.arraycopy(seconds, 1, seconds, 0, 3);
        System.arraycopy(values, 1, values, 0, 3);
        seconds[3] = instant;
        values[3] = value;
    }

    /** How much later than on the chord the level may be passed between the last sample but two and the last but one, in seconds. */
    double seconds(double level) {
        if (Double.isNaN(seconds[0])) {
            return 0;
        }
        double step = seconds[2] - seconds[1];
        double climb = values[2] - values[1];
        double chord = (level - values[1]) / climb;
        double before = (values[1] - values[0]) / (seconds[1] - seconds[0]) * step;
        double after = (values[3] - values[2]) / (seconds[3] - seconds[2]) * step;
        double first = before * climb > 0 ? Math.clamp((level - values[1]) / before, 0, 1) : 1;
        double second = after * climb > 0 ? Math.clamp(1 - (values[2] - level) / after, 0, 1) : 0;
        return step * between(first - chord, second - chord);
    }

    private static double between(double one, double other) {
        if (one * other > 0) {
            return Math.abs(one) < Math.abs(other) ? one : other;
        }
        return (one + other) / 2;
    }
}
