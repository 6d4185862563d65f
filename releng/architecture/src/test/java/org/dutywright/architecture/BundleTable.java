// SPDX-License-Identifier: EPL-2.0
package org.dutywright.architecture;

import static java.util.stream.Collectors.toUnmodifiableSet;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Which core bundle may use what: the one place where the arrows between the bundles stand. A bundle may also use the
 * bundles that those it names may use, for their types pass through; libraries are its own only.
 */
final class BundleTable {
    private static final String PREFIX = "org.dutywright.";

    private static final List<Row> ROWS = List.of(
            row("units", "", ""),
            row("text", "", "org.snakeyaml.engine"),
            row("capture", "units", "org.apache.arrow.flatbuf com.google.flatbuffers"),
            row(
                    "capture.formats",
                    "capture",
                    "de.siegmar.fastcsv ch.randelshofer.fastdoubleparser io.jhdf com.ning.compress us.hebi.matlab.mat"),
            row("pulse", "capture", "org.apache.commons.math3"),
            row("sensor", "units text", ""),
            row("simulation", "capture sensor text", "com.fasterxml.jackson"),
            row("diagnosis", "pulse sensor text", "org.apache.commons.math3"),
            row("report", "diagnosis", "com.fasterxml.jackson"),
            row("cli", "capture.formats simulation report", "picocli"));

    private BundleTable() {}

    /**
     * One bundle.
     *
     * @param name its symbolic name, which the names of all its packages start with
     * @param uses the symbolic names of the bundles it may use directly
     * @param libraries the packages, with those below them, of the libraries it may use
     */
    record Row(String name, Set<String> uses, Set<String> libraries) {
        boolean mayUseLibrary(String packageName) {
            return libraries.stream().anyMatch(library -> isWithin(packageName, library));
        }
    }

    static List<Row> rows() {
        return ROWS;
    }

    /** The bundle that a package belongs to by its name; the longest bundle name that fits. */
    static Optional<Row> ownerOf(String packageName) {
        return ROWS.stream()
                .filter(row -> isWithin(packageName, row.name()))
                .max(Comparator.comparingInt(row -> row.name().length()));
    }

    /** All bundles that a bundle reaches by the arrows; itself among them only if the arrows run in a circle. */
    static Set<String> reachableFrom(Row row) {
        Set<String> reached = new HashSet<>();
        row.uses().forEach(name -> reach(name, reached));
        return reached;
    }

    static boolean isWithin(String packageName, String outer) {
        return packageName.equals(outer) || packageName.startsWith(outer + ".");
    }

    private static void reach(String name, Set<String> reached) {
        if (reached.add(name)) {
            named(name).uses().forEach(next -> reach(next, reached));
        }
    }

    private static Row named(String name) {
        return ROWS.stream()
                .filter(row -> row.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("an arrow leads to " + name + ", which is no bundle"));
    }

    private static Row row(String shortName, String uses, String libraries) {
        Set<String> bundles = words(uses).map(PREFIX::concat).collect(toUnmodifiableSet());
        return new Row(PREFIX + shortName, bundles, words(libraries).collect(toUnmodifiableSet()));
    }

    private static Stream<String> words(String text) {
        return Stream.of(text.split(" ", -1)).filter(word -> !word.isEmpty());
    }
}
