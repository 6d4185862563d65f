// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal.arrays;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.capture.ColumnHeading;
import org.dutywright.units.ScaledUnit;

/**
 * Single numbers and short texts that stand in a file beside its arrays: attributes, and variables of one value. A fact
 * belongs to a place, the path of an array or of a group, and is found by its name without regard to case and
 * punctuation: {@code sample_rate}, {@code SampleRate} and {@code "sample rate (Hz)"} are one name.
 */
public final class Facts {
    private static final int MOST_FACTS = 20_000;
    private static final int LONGEST_TEXT = 200;
    private static final Pattern SUFFIX = Pattern.compile("(.+)[_ ]([^_ ]+)");
    private static final Set<String> UNIT_NAMES = Set.of("unit", "units");

    private final Map<String, Map<String, Fact>> byPlace = new HashMap<>();
    private int count;

    /**
     * A fact.
     *
     * @param place where it belongs
     * @param name as it stands in the file
     * @param number its number, NaN for a text
     * @param text its text, empty for a number
     * @param unit the unit in its name
     */
    record Fact(String place, String name, double number, String text, Optional<ScaledUnit> unit) {
        boolean isNumber() {
            return text.isEmpty() && Double.isFinite(number);
        }
    }

    Facts() {}

    /** Adds a number. */
    public void number(String place, String name, double value) {
        ColumnHeading heading = ColumnHeading.of(name, "");
        add(heading.name(), new Fact(place, name, value, "", heading.unit()));
        Matcher suffix = SUFFIX.matcher(name);
        if (heading.unit().isEmpty() && suffix.matches()) {
            Optional<ScaledUnit> unit = ScaledUnit.parse(suffix.group(2));
            unit.ifPresent(found -> add(suffix.group(1), new Fact(place, name, value, "", unit)));
        }
    }

    /** What a number of 32 bits most likely was before it was rounded to them: 1e-5 instead of 9.9999997e-6. */
    public static double beforeRounding(float value) {
        boolean whole = value == Math.rint(value) || 1 / (double) value == Math.rint(1 / (double) value);
        return whole || !Float.isFinite(value) ? value : Double.parseDouble(Float.toString(value));
    }

    /** Adds a text; a long one tells nothing that is looked for. */
    public void text(String place, String name, String text) {
        String line = text.strip();
        if (!line.isEmpty() && line.length() <= LONGEST_TEXT) {
            add(name, new Fact(place, name, Double.NaN, line, Optional.empty()));
        }
    }

    private void add(String name, Fact fact) {
        if (count < MOST_FACTS
                && byPlace.computeIfAbsent(fact.place(), place -> new HashMap<>())
                                .putIfAbsent(plain(name), fact)
                        == null) {
            count++;
        }
    }

    private static String plain(String name) {
        StringBuilder plain = new StringBuilder();
        name.toLowerCase(Locale.ROOT)
                .codePoints()
                .filter(Character::isLetterOrDigit)
                .forEach(plain::appendCodePoint);
        return plain.toString();
    }

    /** What belongs to an array itself: an attribute, or a neighbour called by its name and the fact's. */
    Optional<Fact> own(String path, List<String> names) {
        return at(path, "", names).or(() -> at(groupOf(path), plain(leafOf(path)), names));
    }

    /** What belongs to an array itself, else to its group. */
    Optional<Fact> beside(String path, List<String> names) {
        return own(path, names).or(() -> at(groupOf(path), "", names));
    }

    /** What belongs to an array itself, else to its group, or to one around it. */
    Optional<Fact> inherited(String path, List<String> names) {
        Optional<Fact> found = own(path, names);
        for (String group = path; found.isEmpty() && !group.isEmpty(); ) {
            group = groupOf(group);
            found = at(group, "", names);
        }
        return found;
    }

    /** What the file says in one place only, or the same everywhere. */
    Optional<Fact> only(List<String> names) {
        List<Fact> all = byPlace.values().stream()
                .flatMap(place -> names.stream().map(place::get))
                .filter(fact -> fact != null && fact.isNumber())
                .toList();
        boolean same = all.stream().mapToDouble(Fact::number).distinct().count() == 1;
        return same ? Optional.of(all.get(0)) : Optional.empty();
    }

    /** The unit of a number: in its name, or beside it. */
    Optional<ScaledUnit> unitOf(Fact fact) {
        String path = fact.place().isEmpty() ? fact.name() : fact.place() + "/" + fact.name();
        return fact.unit().or(() -> own(path, List.copyOf(UNIT_NAMES)).flatMap(unit -> ScaledUnit.parse(unit.text())));
    }

    private Optional<Fact> at(String place, String before, List<String> names) {
        Map<String, Fact> there = byPlace.getOrDefault(place, Map.of());
        return names.stream()
                .map(name -> there.get(before + name))
                .filter(fact -> fact != null)
                .findFirst();
    }

    /** The place around a path, empty at the top. */
    public static String groupOf(String path) {
        return path.substring(0, Math.max(0, path.lastIndexOf('/')));
    }

    /** The last name of a path. */
    public static String leafOf(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }
}
