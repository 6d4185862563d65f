// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Looks at input files before any work begins. */
final class Inputs {
    private Inputs() {}

    /**
     * Makes sure that each file is there and can be read.
     *
     * @throws CommandFailure naming the first that is not
     */
    static void check(List<Path> files) {
        for (Path file : files) {
            if (!Files.exists(file)) {
                throw CommandFailure.noInput(missing(file.toString()));
            }
            if (Files.isDirectory(file)) {
                throw CommandFailure.noInput(file + ": is a folder; name a file in it");
            }
            if (!Files.isReadable(file)) {
                throw CommandFailure.noInput(file + ": no permission to read it; change its permissions");
            }
        }
    }

    /** As {@link #check} for folders. */
    static void checkFolders(List<Path> folders) {
        for (Path folder : folders) {
            if (!Files.exists(folder)) {
                throw CommandFailure.noInput(folder + ": no such folder; check the name");
            }
            if (!Files.isDirectory(folder)) {
                throw CommandFailure.noInput(folder + ": is not a folder; name the folder that holds it");
            }
        }
    }

    static String missing(String file) {
        return file + ": no such file; check the name";
    }
}
