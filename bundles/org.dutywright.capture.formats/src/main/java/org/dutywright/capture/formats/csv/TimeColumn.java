// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.formats.csv.Layout.Kind;
import org.dutywright.units.ScaledUnit;

/**
 * The column of time stamps.
 *
 * @param column its index
 * @param factor seconds for one of its unit
 * @param reason how it was recognised, for people
 * @param unit its unit and how it is known, for people
 */
record TimeColumn(int column, double factor, String reason, String unit) {
    private static final int FEWEST_ROWS = 3;
    private static final Map<Double, String> SYMBOLS = Map.of(1.0, "s", 1e-3, "ms", 1e-6, "us", 1e-9, "ns");

    /**
     * Looks for it: by heading, by unit, else the only column that rises evenly, if it is the first one and does not
     * just count the rows.
     */
    static Optional<TimeColumn> find(Layout layout) {
        for (int column = 0; column < layout.width(); column++) {
            if (layout.kinds().get(column) == Kind.NUMBERS
                    && layout.heading(column).isTime()) {
                return Optional.of(of(layout, column, "by its heading"));
            }
        }
        for (int column = 0; column < layout.width(); column++) {
            if (layout.kinds().get(column) == Kind.NUMBERS
                    && layout.heading(column).hasUnitOfTime()
                    && rises(layout, column)) {
                return Optional.of(of(layout, column, "by its unit"));
            }
        }
        if (layout.kinds().get(0) == Kind.NUMBERS && risesEvenly(layout, 0) && !counts(layout, 0)) {
            for (int column = 1; column < layout.width(); column++) {
                if (layout.kinds().get(column) == Kind.NUMBERS && risesEvenly(layout, column)) {
                    return Optional.empty();
                }
            }
            return Optional.of(of(layout, 0, "as the only one that rises evenly"));
        }
        return Optional.empty();
    }

    private static TimeColumn of(Layout layout, int column, String reason) {
        Optional<ScaledUnit> unit = layout.heading(column).timeUnit();
        String said = unit.map(
                        found -> SYMBOLS.getOrDefault(found.factor(), found.factor() + " s") + ", as the file says")
                .orElse("s, because none is said");
        return new TimeColumn(column, unit.map(ScaledUnit::factor).orElse(1.0), reason, said);
    }

    /** Whether a column just counts the rows. */
    static boolean counts(Layout layout, int column) {
        double[] values = values(layout, column);
        boolean counting = values.length >= FEWEST_ROWS && values[0] == Math.rint(values[0]);
        for (int i = 1; counting && i < values.length; i++) {
            counting = values[i] - values[i - 1] == 1;
        }
        return counting;
    }

    private static boolean rises(Layout layout, int column) {
        double[] steps = steps(layout, column);
        return Arrays.stream(steps).allMatch(step -> step >= 0)
                && Arrays.stream(steps).anyMatch(step -> step > 0);
    }

    private static boolean risesEvenly(Layout layout, int column) {
        double[] steps = steps(layout, column);
        if (steps.length < FEWEST_ROWS - 1 || !Arrays.stream(steps).allMatch(step -> step > 0)) {
            return false;
        }
        double[] sorted = steps.clone();
        Arrays.sort(sorted);
        double median = sorted[sorted.length / 2];
        long near = Arrays.stream(steps)
                .filter(step -> Math.abs(step - median) <= median / 2)
                .count();
        return near >= 0.9 * steps.length;
    }

    private static double[] steps(Layout layout, int column) {
        double[] values = values(layout, column);
        double[] steps = new double[Math.max(0, values.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = values[i + 1] - values[i];
        }
        return steps;
    }

    private static double[] values(Layout layout, int column) {
        NumberCell number = new NumberCell(layout.decimalComma());
        return layout.sample().stream()
                .mapToDouble(row -> number.valueOf(row.cell(column), Double.NaN))
                .filter(value -> !Double.isNaN(value))
                .toArray();
    }
}
