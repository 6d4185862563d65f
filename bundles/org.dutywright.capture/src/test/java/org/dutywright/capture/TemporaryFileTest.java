// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TemporaryFileTest {
    @TempDir
    Path folder;

    @Test
    void filesOfDeadProcessesAreRemovedAndOthersKept() throws IOException {
        // process ids are far below this number on every system
        Files.createFile(folder.resolve("dutywright-999999999999-17.spill"));
        String alive = "dutywright-" + ProcessHandle.current().pid() + "-17.spill";
        Files.createFile(folder.resolve(alive));
        Files.createFile(folder.resolve("dutywright-notes.spill"));

        TemporaryFile.removeStale(folder);
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder(alive, "dutywright-notes.spill");
        }
    }
}
