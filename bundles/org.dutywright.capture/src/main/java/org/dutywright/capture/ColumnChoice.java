// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.units.ScaledUnit;
import org.dutywright.units.Unit;

/** Turns the value columns that a reader found into channels, as the user's settings say. For readers. */
public final class ColumnChoice {
    private static final Pattern WITH_UNIT = Pattern.compile("(.*\\S)\\s*(?:\\(.*\\)|\\[.*]|/.*)\\s*");
    private static final Pattern NUMBERED = Pattern.compile("#(\\d{1,6})");

    private ColumnChoice() {}

    /**
     * A value column.
     *
     * @param heading as it stands in the file, unit included; empty if there is none
     * @param name heading without its unit, or a name made up
     * @param unit symbol of the base unit
     * @param factor by which a number in the file becomes one in the base unit
     */
    public record Column(String heading, String name, String unit, double factor) {}

    /**
     * A channel and where it comes from.
     *
     * @param column index of its column
     * @param channel the channel
     * @param factor by which a number in the file becomes one in the channel's unit, the user's scale included
     */
    public record Chosen(int column, Channel channel, double factor) {}

    /**
     * Chooses. A column without a unit is in volts once the user gives it a scale: the volts of its 1.
     *
     * @param file for messages
     * @param columns all value columns, in order
     * @param settings picks, new names and scales
     * @throws UnreadableException if a pick or a scale names nothing that is there
     */
    public static List<Chosen> choose(Path file, List<Column> columns, ReadSettings settings)
            throws UnreadableException {
        List<String> names = uniqueNames(columns.stream().map(Column::name).toList());
        List<Integer> indices = new ArrayList<>();
        List<String> wanted = new ArrayList<>();
        for (ReadSettings.Pick pick : settings.channels()) {
            indices.add(find(file, pick.column(), columns, names));
            wanted.add(pick.name());
        }
        for (int i = 0; settings.channels().isEmpty() && i < columns.size(); i++) {
            indices.add(i);
            wanted.add(names.get(i));
        }
        List<String> chosenNames = uniqueNames(wanted);
        checkNames(file, "scale", settings.scales().keySet(), chosenNames);
        checkNames(file, "unit", settings.units().keySet(), chosenNames);
        List<Chosen> chosen = new ArrayList<>();
        for (int i = 0; i < indices.size(); i++) {
            Column column = columns.get(indices.get(i));
            String name = chosenNames.get(i);
            Optional<ScaledUnit> given = Optional.ofNullable(settings.units().get(name));
            boolean scaled = settings.scales().containsKey(name);
            String found = scaled && column.unit().isEmpty() ? Unit.VOLT.symbol() : column.unit();
            String unit = given.map(it -> it.unit().symbol()).orElse(found);
            double factor = given.map(ScaledUnit::factor).orElse(column.factor())
                    * settings.scales().getOrDefault(name, 1.0);
            chosen.add(new Chosen(indices.get(i), new Channel(name, unit), factor));
        }
        return chosen;
    }

    /**
     * Settings that choose the same, with every column and unit named.
     *
     * @param columns all value columns, in order
     * @param chosen what was chosen of them
     * @param settings by which it was
     */
    public static ReadSettings asRead(List<Column> columns, List<Chosen> chosen, ReadSettings settings) {
        List<ReadSettings.Pick> picks = new ArrayList<>();
        Map<String, ScaledUnit> units = new LinkedHashMap<>();
        for (Chosen one : chosen) {
            Column column = columns.get(one.column());
            String name = one.channel().name();
            picks.add(new ReadSettings.Pick(designator(columns, one.column()), name));
            Optional.ofNullable(settings.units().get(name))
                    .or(() -> Unit.ofSymbol(column.unit()).map(unit -> new ScaledUnit(unit, column.factor())))
                    .filter(unit -> unit.symbol().isPresent())
                    .ifPresent(unit -> units.put(name, unit));
        }
        return settings.withChannels(picks, settings.scales(), units);
    }

    /** What finds a column again: its heading where it has one of its own, else its number. */
    private static String designator(List<Column> columns, int index) {
        String heading = columns.get(index).heading();
        long alike = columns.stream()
                .filter(column -> same(column.heading(), heading))
                .count();
        boolean own = alike == 1 && !heading.isEmpty() && !heading.startsWith("#");
        return own ? heading : "#" + (index + 1);
    }

    /**
     * Chosen columns of samples, each multiplied by its factor; the same samples if they are all of them, unchanged.
     * Closing the view closes what lies below.
     */
    public static Samples view(Samples all, List<Chosen> chosen) {
        boolean same = chosen.size() == all.channelCount();
        for (int i = 0; same && i < chosen.size(); i++) {
            same = chosen.get(i).column() == i && chosen.get(i).factor() == 1;
        }
        return same ? all : SampleViews.columns(all, chosen);
    }

    /** Adds a number, from 2 on, to each name that occurred before. */
    public static List<String> uniqueNames(List<String> names) {
        Set<String> given = new HashSet<>(names);
        Set<String> used = new HashSet<>();
        List<String> unique = new ArrayList<>();
        for (String name : names) {
            String candidate = name;
            for (int number = 2; used.contains(candidate); number++) {
                String numbered = name + "_" + number;
                candidate = given.contains(numbered) ? name : numbered;
            }
            used.add(candidate);
            unique.add(candidate);
        }
        return unique;
    }

    private static int find(Path file, String wanted, List<Column> columns, List<String> names)
            throws UnreadableException {
        Matcher numbered = NUMBERED.matcher(wanted);
        String bare = withoutUnit(wanted);
        List<Predicate<Integer>> rules = List.of(
                i -> columns.get(i).heading().equals(wanted),
                i -> names.get(i).equals(wanted),
                i -> numbered.matches() && Integer.parseInt(numbered.group(1)) == i + 1,
                i -> same(columns.get(i).heading(), wanted),
                i -> same(names.get(i), wanted),
                i -> same(names.get(i), bare));
        for (Predicate<Integer> rule : rules) {
            Optional<Integer> found = first(columns.size(), rule);
            if (found.isPresent()) {
                return found.get();
            }
        }
        throw UnreadableException.lacks(
                file, "there is no column '" + wanted + "'", "its columns are " + String.join(", ", names));
    }

    private static Optional<Integer> first(int count, Predicate<Integer> rule) {
        for (int i = 0; i < count; i++) {
            if (rule.test(i)) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    private static boolean same(String one, String other) {
        return one.toLowerCase(Locale.ROOT).equals(other.toLowerCase(Locale.ROOT));
    }

    private static String withoutUnit(String heading) {
        Matcher matcher = WITH_UNIT.matcher(heading);
        return matcher.matches() ? matcher.group(1) : heading;
    }

    private static void checkNames(Path file, String what, Set<String> given, List<String> names)
            throws UnreadableException {
        for (String name : given) {
            if (!names.contains(name)) {
                throw UnreadableException.lacks(
                        file,
                        "a " + what + " is given for '" + name + "', which is no channel",
                        "the channels are " + String.join(", ", names));
            }
        }
    }
}
