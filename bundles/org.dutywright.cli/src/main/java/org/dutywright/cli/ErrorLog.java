// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Where internal errors go with their whole cause chain: a file that grows at its end. */
final class ErrorLog {
    private final List<Path> folders;

    private ErrorLog(List<Path> folders) {
        this.folders = List.copyOf(folders);
    }

    /** A log in one of these folders, the first that can be written. */
    static ErrorLog in(Path... folders) {
        return new ErrorLog(List.of(folders));
    }

    /** The user's log: in the folder for state that the system names, else in the one for temporary files. */
    static ErrorLog ofUser(Map<String, String> environment) {
        Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
        return in(stateFolder(environment), temporary);
    }

    private static Path stateFolder(Map<String, String> environment) {
        for (String name : List.of("XDG_STATE_HOME", "LOCALAPPDATA")) {
            String folder = environment.get(name);
            if (folder != null && !folder.isBlank()) {
                return Path.of(folder, "dutywright");
            }
        }
        return Path.of(System.getProperty("user.home"), ".local", "state", "dutywright");
    }

    /** Adds an error and tells the file, empty if none could be written. */
    Optional<Path> add(String command, Throwable error) {
        return folders.stream()
                .map(folder -> folder.resolve("dutywright.log"))
                .filter(file -> append(file, command, error))
                .findFirst();
    }

    private static boolean append(Path file, String command, Throwable error) {
        try {
            Files.createDirectories(file.getParent());
            try (PrintWriter writer = new PrintWriter(Files.newBufferedWriter(
                    file, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND))) {
                writer.println(Instant.now() + " " + Version.text() + ", Java " + Runtime.version() + ": " + command);
                error.printStackTrace(writer);
                return !writer.checkError();
            }
        } catch (IOException e) {
            return false;
        }
    }
}
