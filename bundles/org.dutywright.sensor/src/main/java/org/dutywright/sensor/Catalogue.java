// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.dutywright.text.Mark;
import org.dutywright.text.Nearest;
import org.dutywright.text.Problem;
import org.dutywright.text.ProblemsException;
import org.dutywright.text.TextNode;
import org.dutywright.text.TextTree;

/**
 * The sensors that can be checked against: the built-in demonstration sensors and those of any number of folders.
 * Immutable; adding a folder makes a new one. A file with problems hides none of the others.
 */
public final class Catalogue {
    /** Origin of the sensors that come with the product. */
    public static final String BUILT_IN = "built-in";

    private static final List<String> BUILT_IN_IDS = List.of("twin-pedal-200", "single-throttle-500");

    private static final Mark START = new Mark(1, 1);

    private final List<Entry> entries;
    private final List<Problem> problems;

    /**
     * One sensor of the catalogue.
     *
     * @param sensor the sensor
     * @param origin {@link #BUILT_IN} or its file
     * @param text as its author wrote it
     */
    public record Entry(Sensor sensor, String origin, String text) {}

    private Catalogue(List<Entry> entries, Collection<Problem> problems) {
        this.entries = List.copyOf(entries);
        this.problems = List.copyOf(problems);
    }

    /** The demonstration sensors; all of them are invented. */
    public static Catalogue builtIn() {
        List<Entry> entries = new ArrayList<>();
        for (String id : BUILT_IN_IDS) {
            String text = resource(id + ".yaml");
            try {
                entries.add(new Entry(SensorText.parse(id + ".yaml", text), BUILT_IN, text));
            } catch (ProblemsException e) {
                throw new IllegalStateException("a built-in sensor text is broken: " + e.getMessage(), e);
            }
        }
        return new Catalogue(entries, List.of());
    }

    private static String resource(String name) {
        try (InputStream stream = Catalogue.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalStateException("the built-in sensor text " + name + " is not in the product");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * A catalogue with the sensor texts of a folder added: all its files that end in {@code .yaml} or {@code .yml},
     * by name, folders inside it not looked into. A file that is in the catalogue already is not added again.
     *
     * @throws IOException if the folder cannot be listed
     */
    public Catalogue with(Path folder) throws IOException {
        List<Entry> allEntries = new ArrayList<>(entries);
        Set<Problem> allProblems = new LinkedHashSet<>(problems);
        for (Path file : sensorTexts(folder)) {
            if (isAmong(file, entries)) {
                continue;
            }
            try {
                allEntries.add(read(file, allEntries));
            } catch (ProblemsException e) {
                allProblems.addAll(e.problems());
            } catch (IOException e) {
                allProblems.add(new Problem(file.toString(), START, unreadable(e)));
            }
        }
        return new Catalogue(allEntries, allProblems);
    }

    private static String unreadable(IOException e) {
        return "this file cannot be read, look at its permissions (" + e.getMessage() + ")";
    }

    private static List<Path> sensorTexts(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Catalogue::isNamedAsText)
                    .filter(Files::isRegularFile)
                    .sorted()
                    .toList();
        }
    }

    private static boolean isNamedAsText(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return name.endsWith(".yaml") || name.endsWith(".yml");
    }

    private static boolean isAmong(Path file, List<Entry> entries) {
        Path absolute = file.toAbsolutePath().normalize();
        return entries.stream()
                .filter(entry -> !entry.origin().equals(BUILT_IN))
                .anyMatch(entry ->
                        Path.of(entry.origin()).toAbsolutePath().normalize().equals(absolute));
    }

    private static Entry read(Path file, List<Entry> before) throws IOException, ProblemsException {
        String text = TextTree.read(file);
        Sensor sensor = SensorText.parse(file.toString(), text);
        for (Entry other : before) {
            if (other.sensor().id().equals(sensor.id())) {
                String message = "the sensor '" + sensor.id() + "' is there already, " + other.origin()
                        + "; give this one another id";
                throw new ProblemsException(List.of(new Problem(file.toString(), idMark(file, text), message)));
            }
        }
        return new Entry(sensor, file.toString(), text);
    }

    private static Mark idMark(Path file, String text) throws ProblemsException {
        return TextTree.parse(file.toString(), text) instanceof TextNode.MapNode map
                        && map.entries().containsKey("id")
                ? map.entries().get("id").value().mark()
                : START;
    }

    /** All sensors, built-in ones first, then in the order of the folders and file names. */
    public List<Entry> entries() {
        return entries;
    }

    /** What is wrong with files of the folders; their sensors are not in the catalogue. */
    public List<Problem> problems() {
        return problems;
    }

    /** The sensor of this id. */
    public Optional<Entry> find(String id) {
        return entries.stream().filter(entry -> entry.sensor().id().equals(id)).findFirst();
    }

    /** What to try for an id that is not there. */
    public String hint(String id) {
        return Nearest.hint(
                id, entries.stream().map(entry -> entry.sensor().id()).toList());
    }
}
