// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * The instant of a transition from many of its samples: the least-squares parabola through those within a quarter of the
 * transition's duration before and after a first guess, and the instant where it passes the level. Constant memory: of
 * a transition of very many samples neighbours are averaged.
 *
 * <p>The window ends well inside the reference levels, so corners where a transition begins or ends lie outside it for
 * a ramp as for an exponential (which passes 10 % only 0.27 durations before 50 %). A parabola leaves of a smooth
 * transition only the fourth order: 3 / 35 of the fourth-order term at the border of the window. For an exponential that
 * is 0.00016 durations (0.0006 with the six samples that the least transition has there), for a ramp and a Gaussian edge 0. Independent noise of n samples moves the instant by 1.5 / sqrt(n)
 * of what a single sample's would.
 */
final class EdgeFit {
    /** Standard deviation of a parabola's value in its middle, in that of one of n samples over the root of n. */
    static final double NOISE_GAIN = 1.5;

    /** Half-width of the window in durations of the transition. */
    private static final double HALF_WINDOW = 0.25;

    /** A parabola has three coefficients; with fewer points than this it would hardly average. */
    private static final int LEAST_POINTS = 5;

    private static final int BEND_POINTS = 3;

    private static final int MOST = 1024;

    private final double[] seconds = new double[MOST];
    private final double[] values = new double[MOST];
    private int count;
    private int stride = 1;
    private int pending;
    private double pendingSeconds;
    private double pendingValues;
    private int used;
    private double slope;
    private double bend;

    /** Forgets all samples. */
    void clear() {
        count = 0;
        stride = 1;
        pending = 0;
        pendingSeconds = 0;
        pendingValues = 0;
    }

    /** Takes the next sample. */
    void add(double atSeconds, double value) {
        if (stride == 1) {
            keep(atSeconds, value);
            return;
        }
        pendingSeconds += atSeconds;
        pendingValues += value;
        pending++;
        if (pending == stride) {
            keep(pendingSeconds / stride, pendingValues / stride);
            pending = 0;
            pendingSeconds = 0;
            pendingValues = 0;
        }
    }

    private void keep(double atSeconds, double value) {
        seconds[count] = atSeconds;
        values[count] = value;
        count++;
        if (count == MOST) {
            for (int i = 0; i < MOST / 2; i++) {
                seconds[i] = (seconds[2 * i] + seconds[2 * i + 1]) / 2;
                values[i] = (values[2 * i] + values[2 * i + 1]) / 2;
            }
            count = MOST / 2;
            stride *= 2;
        }
    }

    /**
     * The instant at which the samples pass a level.
     *
     * @param guessSeconds where about
     * @param durationSeconds 10 to 90 % duration of the transition
     * @param sign 1 if it rises, -1 if it falls
     * @return NaN where there are too few samples, or where they do not tell
     */
    double instantSeconds(double guessSeconds, double durationSeconds, double level, int sign) {
        double half = HALF_WINDOW * durationSeconds;
        int from = 0;
        while (from < count && seconds[from] < guessSeconds - half) {
            from++;
        }
        int to = from;
        while (to < count && seconds[to] <= guessSeconds + half) {
            to++;
        }
        used = (to - from) * stride;
        if (to - from < LEAST_POINTS) {
            return Double.NaN;
        }
        double share = crossing(from, to, guessSeconds, half, level, sign);
        return share >= -1 && share <= 1 ? guessSeconds + share * half : Double.NaN;
    }

    /** Number of samples in the last fit. */
    int samples() {
        return used;
    }

    /**
     * Second derivative over the first one at an instant, a second: what bends the transition between the samples. From the
     * parabola through all samples between the reference levels; NaN for fewer than three.
     */
    double bend(double guessSeconds, double durationSeconds, double level, int sign) {
        int inside = count - 1;
        if (inside < BEND_POINTS || stride > 1) {
            return Double.NaN;
        }
        crossing(0, inside, guessSeconds, durationSeconds / 2, level, sign);
        return bend;
    }

    /** Steepness in the middle of the last fit, in units a second. */
    double slope() {
        return slope;
    }

    // Sums over x from -1 to 1, then the normal equations of d + b x + c x^2 by Cramer's rule, d from the level.
    private double crossing(int from, int to, double guessSeconds, double half, double level, int sign) {
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        double s4 = 0;
        double t0 = 0;
        double t1 = 0;
        double t2 = 0;
        for (int i = from; i < to; i++) {
            double x = (seconds[i] - guessSeconds) / half;
            double y = values[i] - level;
            double square = x * x;
            s1 += x;
            s2 += square;
            s3 += square * x;
            s4 += square * square;
            t0 += y;
            t1 += y * x;
            t2 += y * square;
        }
        double s0 = to - from;
        double m00 = s2 * s4 - s3 * s3;
        double m01 = s2 * s3 - s1 * s4;
        double m02 = s1 * s3 - s2 * s2;
        double determinant = s0 * m00 + s1 * m01 + s2 * m02;
        double d = (m00 * t0 + m01 * t1 + m02 * t2) / determinant;
        double b = (m01 * t0 + (s0 * s4 - s2 * s2) * t1 + (s1 * s2 - s0 * s3) * t2) / determinant;
        double c = (m02 * t0 + (s1 * s2 - s0 * s3) * t1 + (s0 * s2 - s1 * s1) * t2) / determinant;
        slope = Math.abs(b) / half;
        bend = 2 * c / (b * half);
        // the root near the middle of the window, in the form that loses no digits where the curvature is small
        double q = -(b + sign * Math.sqrt(b * b - 4 * c * d)) / 2;
        return sign * b > 0 ? d / q : Double.NaN;
    }
}
