// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Compares lines with a file that a person has read and accepted. */
final class Golden {
    private static final Path FOLDER = Path.of("src", "test", "resources", "golden");

    private Golden() {}

    static void check(String name, List<String> lines) throws IOException {
        Path accepted = FOLDER.resolve(name);
        Path actual = FOLDER.resolve(name + ".new");
        String text = String.join("\n", lines) + "\n";
        String expected = Files.exists(accepted) ? Files.readString(accepted) : "";
        if (text.equals(expected)) {
            Files.deleteIfExists(actual);
            return;
        }
        Files.writeString(actual, text);
        assertThat(text)
                .as("%s differs; if the new text is right: mv %s %s", name, actual, accepted)
                .isEqualTo(expected);
    }
}
