// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Finds the open recordings that lie beside the project, if they are there. */
public final class SharedData {
    private SharedData() {}

    /** A folder of ../shared/data, seen from the project's root, or of where DUTYWRIGHT_SHARED_DATA points. */
    public static Optional<Path> folder(String name) {
        String said = System.getProperty("DUTYWRIGHT_SHARED_DATA", System.getenv("DUTYWRIGHT_SHARED_DATA"));
        if (said != null) {
            return existing(Path.of(said).resolve(name));
        }
        Path at = Path.of("").toAbsolutePath();
        while (at != null && !(Files.isDirectory(at.resolve("releng")) && Files.exists(at.resolve("pom.xml")))) {
            at = at.getParent();
        }
        return at == null
                ? Optional.empty()
                : existing(at.resolve("../shared/data").resolve(name));
    }

    private static Optional<Path> existing(Path folder) {
        return Files.isDirectory(folder) ? Optional.of(folder.normalize()) : Optional.empty();
    }
}
