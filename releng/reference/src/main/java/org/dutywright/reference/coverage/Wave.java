// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.coverage;

/** A signal in closed form: transitions that start at given instants, each from wherever the one before had come to. */
final class Wave {
    /** A single pole and a Gaussian edge have come within 1e-5 of their way after so many scales, a ramp is over. */
    private static final double SETTLED = 12;

    private static final int PANELS = 120;

    private final double low;
    private final double high;
    private final Corner corner;
    private final double[] starts;
    private final double[] from;
    private final boolean firstRises;

    /**
     * A signal.
     *
     * @param starts where transitions start, in order; every other one rises
     */
    Wave(Corner corner, double low, double high, double[] starts, boolean firstRises) {
        this.corner = corner;
        this.low = low;
        this.high = high;
        this.starts = starts.clone();
        this.firstRises = firstRises;
        from = new double[starts.length];
        for (int i = 0; i < starts.length; i++) {
            from[i] = i == 0 ? firstRises ? low : high : after(i - 1, starts[i]);
        }
    }

    boolean rises(int transition) {
        return firstRises == (transition % 2 == 0);
    }

    int transitions() {
        return starts.length;
    }

    private double target(int transition) {
        return rises(transition) ? high : low;
    }

    private double scale(int transition) {
        return Math.max(1e-12, corner.scaleSeconds(rises(transition)));
    }

    private Form form(int transition) {
        return corner.form(rises(transition));
    }

    private double after(int i, double seconds) {
        double share = form(i).share((seconds - starts[i]) / scale(i));
        return from[i] + share * (target(i) - from[i]);
    }

    /** The values at evenly spaced instants. */
    double[] sample(double firstSeconds, double stepSeconds, int count) {
        double[] values = new double[count];
        int i = -1;
        for (int k = 0; k < count; k++) {
            double seconds = firstSeconds + k * stepSeconds;
            while (i + 1 < starts.length && starts[i + 1] <= seconds) {
                i++;
            }
            values[k] = i < 0 ? from[0] : after(i, seconds);
        }
        return values;
    }

    /** 50 % instant of a transition. */
    double middle(int i) {
        return passes(i, (low + high) / 2);
    }

    /** When a transition passes a level that lies on its way. */
    double passes(int i, double level) {
        double share = (level - from[i]) / (target(i) - from[i]);
        return starts[i] + scale(i) * form(i).inverse(share);
    }

    /** Integral of the signal from one instant to another, both after the first start. */
    double integral(double fromSeconds, double toSeconds) {
        return upTo(toSeconds) - upTo(fromSeconds);
    }

    private double upTo(double seconds) {
        double sum = 0;
        for (int i = 0; i < starts.length && starts[i] < seconds; i++) {
            double end = i + 1 < starts.length ? Math.min(seconds, starts[i + 1]) : seconds;
            double x = (end - starts[i]) / scale(i);
            sum += from[i] * (end - starts[i]) + (target(i) - from[i]) * form(i).integral(x) * scale(i);
        }
        return sum;
    }

    /** Integral of the squared signal from one instant to another by Simpson's rule, dense where a transition is under way. */
    double integralOfSquares(double fromSeconds, double toSeconds) {
        double sum = 0;
        for (int i = 0; i < starts.length && starts[i] < toSeconds; i++) {
            double start = Math.max(fromSeconds, starts[i]);
            double end = i + 1 < starts.length ? Math.min(toSeconds, starts[i + 1]) : toSeconds;
            if (end > start) {
                double settled = Math.clamp(starts[i] + SETTLED * scale(i), start, end);
                sum += simpson(i, start, settled) + simpson(i, settled, end);
            }
        }
        return sum;
    }

    private double simpson(int i, double start, double end) {
        double step = (end - start) / PANELS;
        double sum = 0;
        for (int k = 0; k <= PANELS; k++) {
            double value = after(i, start + k * step);
            double weight = k == 0 || k == PANELS ? 1 : k % 2 == 1 ? 4 : 2;
            sum += weight * value * value;
        }
        return sum * step / 3;
    }
}
