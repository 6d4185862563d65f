// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.OutputFile;
import org.dutywright.reference.coverage.CoverageStudy;
import org.dutywright.reference.events.CleanCaptures;
import org.dutywright.reference.events.InjectedFaults;

/** Repeats a study. Started by the script {@code repeat}; README.md beside it says more. */
public final class Repeat {
    /** All studies. */
    static final List<Study> STUDIES = List.of(new CleanCaptures(), new InjectedFaults(), new CoverageStudy());

    private static final int USAGE = 64;

    private Repeat() {}

    /**
     * Runs a study.
     *
     * @param arguments folder of the pages; name of the study; share of its cases, where it is to be printed only
     */
    public static void main(String[] arguments) throws IOException {
        Optional<Study> study = arguments.length < 2 ? Optional.empty() : named(arguments[1]);
        if (study.isEmpty()) {
            System.err.println("dutywright: name one of these studies:");
            STUDIES.forEach(it -> System.err.println("  " + it.name() + "  " + it.title()));
            System.exit(USAGE);
        }
        if (arguments.length > 2) {
            System.out.print(page(study.orElseThrow(), Double.parseDouble(arguments[2])));
        } else {
            write(study.orElseThrow(), Path.of(arguments[0]));
        }
    }

    private static Optional<Study> named(String name) {
        return STUDIES.stream().filter(study -> study.name().equals(name)).findFirst();
    }

    private static void write(Study study, Path folder) throws IOException {
        Files.createDirectories(folder);
        Path file = folder.resolve(study.name() + ".md");
        String page = page(study, 1);
        OutputFile.write(file, stream -> stream.write(page.getBytes(StandardCharsets.UTF_8)));
        System.out.print(page);
    }

    private static String page(Study study, double share) throws IOException {
        Page page = new Page(study.title());
        page.paragraph("Written by `bash releng/reference/repeat " + study.name() + "`.");
        study.run(share, page);
        return page.text();
    }
}
