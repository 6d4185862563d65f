// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.dutywright.capture.TimeSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.csv.Layout.Kind;
import org.dutywright.units.ScaledUnit;

/**
 * The column of time stamps.
 *
 * @param column its index
 * @param factor seconds for one of its unit
 * @param reason how it was recognised, for people
 * @param unit its unit and how it is known, for people
 * @param clock whether it holds clock times
 */
record TimeColumn(int column, double factor, String reason, String unit, boolean clock) {
    private static final int FEWEST_ROWS = 3;

    /**
     * The one that the user says, else one that is found.
     *
     * @throws UnreadableException if there is no such column
     */
    static Optional<TimeColumn> find(Path file, Layout layout, TimeSettings said) throws UnreadableException {
        if (said.deniesColumn()) {
            return Optional.empty();
        }
        Optional<TimeColumn> found = said.column().isPresent()
                ? Optional.of(given(file, layout, said.column().get()))
                : find(layout);
        return found.map(column -> column.in(said));
    }

    /** What finds the column again: its heading where it has one of its own, else its number. */
    String designator(Layout layout) {
        String heading = layout.heading(column).text();
        boolean own = !heading.isEmpty()
                && !heading.startsWith("#")
                && !lower(heading).equals(TimeSettings.NONE);
        for (int other = 0; own && other < layout.width(); other++) {
            own = other == column || !lower(layout.heading(other).text()).equals(lower(heading));
        }
        return own ? heading : "#" + (column + 1);
    }

    private TimeColumn in(TimeSettings said) {
        return said.unit()
                .filter(given -> !clock)
                .map(given -> new TimeColumn(column, given.factor(), reason, symbol(given) + ", as given", false))
                .orElse(this);
    }

    private static TimeColumn given(Path file, Layout layout, String wanted) throws UnreadableException {
        List<String> headings = new ArrayList<>();
        int found = -1;
        for (int column = layout.width() - 1; column >= 0; column--) {
            String text = layout.heading(column).text();
            headings.addFirst(text.isEmpty() ? "#" + (column + 1) : text);
            boolean same = wanted.equals("#" + (column + 1))
                    || lower(text).equals(lower(wanted))
                    || lower(layout.heading(column).name()).equals(lower(wanted));
            found = same ? column : found;
        }
        if (found < 0) {
            throw UnreadableException.lacks(
                    file,
                    "there is no column '" + wanted + "' of time",
                    "its columns are " + String.join(", ", headings));
        }
        Kind kind = layout.kinds().get(found);
        if (kind != Kind.NUMBERS && kind != Kind.CLOCK) {
            throw UnreadableException.lacks(
                    file, "column '" + wanted + "' holds no time stamps", "name another one as the time column");
        }
        return of(layout, found, "as given");
    }

    private static String lower(String text) {
        return text.toLowerCase(Locale.ROOT).strip();
    }

    /**
     * Looks for it: by heading, clock times, by unit, else the only column that rises evenly, if it is the first one
     * of numbers and does not just count the rows.
     */
    private static Optional<TimeColumn> find(Layout layout) {
        for (int column = 0; column < layout.width(); column++) {
            if (layout.kinds().get(column) == Kind.NUMBERS
                    && layout.heading(column).isTime()) {
                return Optional.of(of(layout, column, "recognised by its heading"));
            }
        }
        int clock = layout.kinds().indexOf(Kind.CLOCK);
        if (clock >= 0) {
            return Optional.of(of(layout, clock, "recognised by its clock times"));
        }
        for (int column = 0; column < layout.width(); column++) {
            if (layout.kinds().get(column) == Kind.NUMBERS
                    && layout.heading(column).hasUnitOfTime()
                    && rises(layout, column)) {
                return Optional.of(of(layout, column, "recognised by its unit"));
            }
        }
        // some put the text before the table beside its first rows
        int first = layout.kinds().indexOf(Kind.NUMBERS);
        if (first >= 0 && risesEvenly(layout, first) && !counts(layout, first)) {
            for (int column = first + 1; column < layout.width(); column++) {
                if (layout.kinds().get(column) == Kind.NUMBERS && risesEvenly(layout, column)) {
                    return Optional.empty();
                }
            }
            return Optional.of(of(layout, first, "recognised as the only one that rises evenly"));
        }
        return Optional.empty();
    }

    private static TimeColumn of(Layout layout, int column, String reason) {
        if (layout.kinds().get(column) == Kind.CLOCK) {
            return new TimeColumn(column, 1, reason, "clock, taken as seconds since midnight of the first day", true);
        }
        Optional<ScaledUnit> unit = layout.heading(column).timeUnit();
        String said = unit.map(found -> symbol(found) + ", as the file says").orElse("s, because none is said");
        return new TimeColumn(column, unit.map(ScaledUnit::factor).orElse(1.0), reason, said, false);
    }

    private static String symbol(ScaledUnit unit) {
        return unit.symbol().orElse(unit.factor() + " s").replace('µ', 'u');
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
