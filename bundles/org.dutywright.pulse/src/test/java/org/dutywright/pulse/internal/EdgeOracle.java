// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import org.apache.commons.math3.analysis.solvers.LaguerreSolver;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.fitting.PolynomialCurveFitter;
import org.apache.commons.math3.fitting.WeightedObservedPoints;

/**
 * The slow and obvious edge finder: it looks at the whole recording as often as it likes. For each segment it writes down
 * the state after every sample, then searches back and forth from each change of state. Where levels move in the middle of
 * a transition, only its direction and place are sure.
 */
final class EdgeOracle {
    /**
     * One transition.
     *
     * @param rising whether it leads to the high state
     * @param seconds its instant
     * @param durationSeconds NaN where the signal did not pass both reference levels
     * @param samples samples between the reference levels
     * @param crossings number of crossings of the 50 % level
     * @param fitted samples in the fit that gave the instant, 0 where it lies between crossings
     * @param complete whether the signal came from home and arrived; otherwise only direction and place are sure
     */
    record Found(
            boolean rising,
            double seconds,
            double durationSeconds,
            int samples,
            int crossings,
            int fitted,
            boolean complete) {}

    /** The setting's default. */
    private static final int FITTED_FROM = 12;

    private static final Fit NO_FIT = new Fit(Double.NaN, 0);

    private final double[] values;
    private final double[] seconds;
    private final IntFunction<Thresholds> levelsAt;

    /** Levels at the sample that shows the transition looked at. */
    private Thresholds levels;

    EdgeOracle(double[] values, double[] seconds, Thresholds levels) {
        this(values, seconds, i -> levels);
    }

    /** With the levels that hold at each sample. */
    EdgeOracle(double[] values, double[] seconds, IntFunction<Thresholds> levelsAt) {
        this.values = values;
        this.seconds = seconds;
        this.levelsAt = levelsAt;
    }

    /** All transitions of the samples from one index to before another. */
    List<Found> segment(int from, int to) {
        int[] state = new int[to];
        List<Integer> triggers = new ArrayList<>();
        int now = 0;
        for (int i = from; i < to; i++) {
            int next = now;
            levels = levelsAt.apply(i);
            if (values[i] >= levels.middle() + levels.hysteresis()) {
                next = 1;
            } else if (values[i] <= levels.middle() - levels.hysteresis()) {
                next = -1;
            }
            if (now != 0 && next != now) {
                triggers.add(i);
            }
            now = next;
            state[i] = now;
        }
        List<Found> found = new ArrayList<>();
        for (int k = 0; k < triggers.size(); k++) {
            int earliest = k == 0 ? firstKnown(state, from) : triggers.get(k - 1);
            int latest = k + 1 < triggers.size() ? triggers.get(k + 1) : to;
            found.add(at(triggers.get(k), earliest, latest, state[triggers.get(k)] > 0));
        }
        return found;
    }

    private static int firstKnown(int[] state, int from) {
        int i = from;
        while (state[i] == 0) {
            i++;
        }
        return i;
    }

    private Found at(int trigger, int earliest, int latest, boolean rising) {
        levels = levelsAt.apply(trigger);
        double start = rising ? levels.lower() : levels.upper();
        double end = rising ? levels.upper() : levels.lower();
        int home = trigger;
        while (home >= earliest && beyond(values[home], start, rising)) {
            home--;
        }
        int arrived = trigger;
        while (arrived < latest && !reached(values[arrived], end, rising)) {
            arrived++;
        }
        boolean steady = home >= 0
                && levelsAt.apply(home).equals(levels)
                && levelsAt.apply(Math.min(arrived, values.length - 1)).equals(levels);
        boolean complete = home >= earliest && arrived < latest && steady;
        List<Double> crossings = new ArrayList<>();
        for (int i = Math.max(home, earliest) + 1; i <= Math.min(arrived, latest - 1); i++) {
            boolean before = beyondMiddle(values[i - 1], rising);
            if (before != beyondMiddle(values[i], rising)) {
                crossings.add(crossing(i, levels.middle()));
            }
        }
        double instant = (crossings.get(0) + crossings.get(crossings.size() - 1)) / 2;
        double duration = complete ? crossing(arrived, end) - crossing(home + 1, start) : Double.NaN;
        int samples = arrived - home - 1;
        Fit fit = samples >= FITTED_FROM && duration > 0 ? fit(home + 1, arrived, instant, duration) : NO_FIT;
        double seen = fit.samples == 0 ? instant : fit.seconds;
        return new Found(rising, seen, duration, samples, crossings.size(), fit.samples, complete);
    }

    private record Fit(double seconds, int samples) {}

    // A parabola by a library, through the samples within a quarter of the duration, and its root nearest to the guess.
    private Fit fit(int from, int to, double guess, double duration) {
        WeightedObservedPoints points = new WeightedObservedPoints();
        for (int i = from; i <= to; i++) {
            if (Math.abs(seconds[i] - guess) <= duration / 4) {
                points.add((seconds[i] - guess) / duration, values[i] - levels.middle());
            }
        }
        int count = points.toList().size();
        if (count < 5) {
            return NO_FIT;
        }
        double[] parabola = PolynomialCurveFitter.create(2).fit(points.toList());
        double root = new LaguerreSolver(1e-15, 1e-15).solveAllComplex(parabola, 0)[0].getReal();
        for (Complex other : new LaguerreSolver(1e-15, 1e-15).solveAllComplex(parabola, 0)) {
            root = Math.abs(other.getReal()) < Math.abs(root) ? other.getReal() : root;
        }
        boolean tells = parabola[1] * (values[to] - values[from]) > 0 && Math.abs(root) <= 0.25;
        return tells ? new Fit(guess + root * duration, count) : NO_FIT;
    }

    private static boolean beyond(double value, double level, boolean rising) {
        return rising ? value > level : value < level;
    }

    private static boolean reached(double value, double level, boolean rising) {
        return rising ? value >= level : value <= level;
    }

    private boolean beyondMiddle(double value, boolean rising) {
        return rising ? value >= levels.middle() : value <= levels.middle();
    }

    private double crossing(int i, double level) {
        double share = (level - values[i - 1]) / (values[i] - values[i - 1]);
        return seconds[i - 1] + share * (seconds[i] - seconds[i - 1]);
    }

    /** Integral of the samples joined by straight lines, from one instant to another, sample by sample. */
    double integral(double from, double to) {
        double sum = 0;
        for (int i = 1; i < values.length; i++) {
            double a = Math.max(from, seconds[i - 1]);
            double b = Math.min(to, seconds[i]);
            if (b > a) {
                sum += (at(i, a) + at(i, b)) / 2 * (b - a);
            }
        }
        return sum;
    }

    private double at(int i, double instant) {
        double share = (instant - seconds[i - 1]) / (seconds[i] - seconds[i - 1]);
        return values[i - 1] + share * (values[i] - values[i - 1]);
    }
}
