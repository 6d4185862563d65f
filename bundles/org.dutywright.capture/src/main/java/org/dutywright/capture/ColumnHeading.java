// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.units.Dimension;
import org.dutywright.units.ScaledUnit;

/**
 * What stands above a column: a name with or without a unit, as {@code signal1 (mV)}, {@code signal1 [mV]} or
 * {@code signal1/mV}. For readers.
 *
 * @param text as in the file, empty if there is none
 * @param name the text without its unit
 * @param unit the unit in the text, else that of the unit line
 * @param unknownUnit what stands where a unit should, but is none; empty if there is none, {@value #NO_UNIT} if it says that
 *     there is none
 */
public record ColumnHeading(String text, String name, Optional<ScaledUnit> unit, String unknownUnit) {
    /** Stands in the place of a unit where a number has none. */
    public static final String NO_UNIT = "-";

    private static final Pattern BRACKETED = Pattern.compile("(.*?)\\s*(?:\\(([^()]*)\\)|\\[([^\\[\\]]*)])");
    private static final Pattern CONTROLS = Pattern.compile("[\\p{Cntrl}\\s]+");
    private static final int LONGEST = 200;
    private static final Pattern AFTER_SLASH = Pattern.compile("(.+?)\\s*/\\s*([^/]+)");
    private static final Pattern AFTER_SEPARATOR = Pattern.compile("(.+)[_ .,-]\\s*([^_ .,-]+)");
    private static final Set<String> TIME_NAMES = Set.of(
            "t",
            "times",
            "timestamp",
            "timestamps",
            "elapsed",
            "elapsed time",
            "relative time",
            "zeit",
            "temps",
            "tiempo",
            "tempo",
            "tijd",
            "second",
            "seconds",
            "sec",
            "secs");
    private static final Pattern TIME_FIRST = Pattern.compile("time(?:$|[^a-z].*)");
    private static final Set<String> INDEX_NAMES =
            Set.of("index", "sample", "samples", "no", "no.", "nr", "nr.", "number", "n", "row", "point", "#");

    /**
     * Reads a heading.
     *
     * @param text in the header line, empty if there is none
     * @param unitCell in the unit line, empty if there is none
     */
    public static ColumnHeading of(String text, String unitCell) {
        // names are shown in one line, and no heading of a channel is a page long
        return ofOneLine(oneLine(text), oneLine(unitCell));
    }

    private static String oneLine(String cell) {
        String line = CONTROLS.matcher(cell).replaceAll(" ").strip();
        return line.length() <= LONGEST ? line : line.substring(0, LONGEST);
    }

    private static ColumnHeading ofOneLine(String text, String unitCell) {
        String below = withoutBrackets(unitCell);
        Optional<ScaledUnit> fromLine = ScaledUnit.parse(below);
        String unknown = fromLine.isEmpty() ? below : "";
        Matcher bracketed = BRACKETED.matcher(text);
        if (bracketed.matches()) {
            String inside = bracketed.group(2) == null ? bracketed.group(3) : bracketed.group(2);
            Optional<ScaledUnit> unit = ScaledUnit.parse(inside);
            if (unit.isPresent()) {
                return new ColumnHeading(text, bracketed.group(1), unit, "");
            }
            if (inside.equals(NO_UNIT)) {
                return new ColumnHeading(text, bracketed.group(1), Optional.empty(), NO_UNIT);
            }
            return new ColumnHeading(text, text, fromLine, fromLine.isPresent() ? "" : inside);
        }
        Matcher slashed = AFTER_SLASH.matcher(text);
        if (slashed.matches() && ScaledUnit.parse(slashed.group(2)).isPresent()) {
            return new ColumnHeading(text, slashed.group(1), ScaledUnit.parse(slashed.group(2)), "");
        }
        return new ColumnHeading(text, text, fromLine, unknown);
    }

    /**
     * The symbol of the base unit: that of {@link #unit}, none where the heading says that there is none, as in {@code
     * brake [-]}, else the one given.
     */
    public String baseUnit(String otherwise) {
        if (unit.isPresent()) {
            return unit.get().unit().symbol();
        }
        return unknownUnit.equals(NO_UNIT) ? "" : otherwise;
    }

    /** Whether a cell of a unit line is one: "V", "(ms)", "[Volts]". */
    public static boolean isUnit(String cell) {
        String unit = withoutBrackets(cell);
        return unit.equals(NO_UNIT) || ScaledUnit.parse(unit).isPresent();
    }

    private static String withoutBrackets(String cell) {
        Matcher matcher = BRACKETED.matcher(cell);
        if (matcher.matches() && matcher.group(1).isEmpty()) {
            return matcher.group(2) == null ? matcher.group(3) : matcher.group(2);
        }
        return cell;
    }

    /** Whether the column is named as one of time. */
    public boolean isTime() {
        String lower = name.toLowerCase(Locale.ROOT).strip();
        return TIME_NAMES.contains(lower) || TIME_FIRST.matcher(lower).matches();
    }

    /** Whether the column is named as one that counts rows. */
    public boolean isIndex() {
        return INDEX_NAMES.contains(name.toLowerCase(Locale.ROOT).strip());
    }

    /** Whether a unit of time stands with it. */
    public boolean hasUnitOfTime() {
        return unit.isPresent() && unit.get().unit().dimension() == Dimension.TIME;
    }

    /** Unit of a time column, also from headings such as {@code time_ms}; empty if none is said. */
    public Optional<ScaledUnit> timeUnit() {
        if (hasUnitOfTime()) {
            return unit;
        }
        Matcher matcher = AFTER_SEPARATOR.matcher(text);
        Optional<ScaledUnit> after = matcher.matches() ? ScaledUnit.parse(matcher.group(2)) : ScaledUnit.parse(text);
        return after.filter(found -> found.unit().dimension() == Dimension.TIME);
    }
}
