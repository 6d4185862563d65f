// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.CannotCreateException;

/** Looks at output files before any work begins, so that an hour's recording is not measured for nothing. */
final class Outputs {
    private final Map<String, Path> files = new LinkedHashMap<>();

    /** Adds one, by the option that named it. */
    Outputs add(String option, Path file) {
        files.put(option, file);
        return this;
    }

    /**
     * Makes sure that no output is an input or another output, and that each can be created.
     *
     * @throws CommandFailure if two are the same file
     * @throws CannotCreateException if one cannot be created
     */
    void check(List<Path> inputs) throws IOException {
        Map<Path, String> taken = new LinkedHashMap<>();
        for (Map.Entry<String, Path> entry : files.entrySet()) {
            Path file = entry.getValue();
            for (Path input : inputs) {
                if (identity(input).equals(identity(file))) {
                    throw CommandFailure.usage(
                            entry.getKey() + " " + file + ": is also an input; write to another file");
                }
            }
            String other = taken.putIfAbsent(identity(file), entry.getKey());
            if (other != null) {
                throw CommandFailure.usage(
                        entry.getKey() + " " + file + ": is also the file of " + other + "; write to another file");
            }
            checkCreatable(file);
        }
    }

    private static void checkCreatable(Path file) throws IOException {
        if (Files.isDirectory(file)) {
            throw new CannotCreateException(file, "it is a folder; name a file in it");
        }
        Path folder = file.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw new CannotCreateException(file, "its folder does not exist; make the folder first");
        }
        // A file is replaced by one made beside it, a device or a pipe is written in place.
        boolean madeBeside = !Files.exists(file) || Files.isRegularFile(file);
        if (madeBeside && !Files.isWritable(folder)) {
            throw new CannotCreateException(file, "no permission; choose another folder");
        }
    }

    /** The same for two names of one file, links followed, whether or not it exists yet. */
    private static Path identity(Path file) throws IOException {
        if (Files.exists(file)) {
            return file.toRealPath();
        }
        Path absolute = file.toAbsolutePath().normalize();
        Path folder = absolute.getParent();
        return folder != null && Files.exists(folder) ? folder.toRealPath().resolve(absolute.getFileName()) : absolute;
    }
}
