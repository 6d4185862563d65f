// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class CatalogueTest {
    @TempDir
    private Path folder;

    @Test
    void theBuiltInSensorsAreListed() {
        Run run = Run.of("catalogue", "list");
        assertThat(run.status()).isZero();
        assertThat(run.lines())
                .anyMatch(line -> line.startsWith("twin-pedal-200 ") && line.endsWith("built-in"))
                .anyMatch(line -> line.startsWith("single-throttle-500 "));
    }

    @Test
    void aSensorIsShownAsItsAuthorWroteIt() {
        Run run = Run.of("catalogue", "show", "twin-pedal-200");
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("schema: dutywright.sensor/1\n").contains("id: twin-pedal-200\n");
    }

    @Test
    void aFolderAddsItsSensors() throws IOException {
        String text = Run.of("catalogue", "show", "twin-pedal-200").out().replace("id: twin-pedal-200", "id: yard");
        Files.writeString(folder.resolve("yard.yaml"), text);
        Run run = Run.of("catalogue", "list", "--catalogue", folder);
        assertThat(run.status()).isZero();
        assertThat(run.lines()).anyMatch(line -> line.startsWith("yard ") && line.endsWith("yard.yaml"));
    }

    @Test
    void everyProblemOfEveryTextIsALineWithItsPlace() throws IOException {
        Path first = Files.writeString(folder.resolve("first.yaml"), "schema: dutywright.sensor/1\nidd: yard\n");
        Path second = Files.writeString(folder.resolve("second.yaml"), "schema: [\n");
        Run run = Run.of("catalogue", "validate", first, second);
        assertThat(run.status()).isEqualTo(65);
        assertThat(run.errors())
                .hasSizeGreaterThanOrEqualTo(3)
                .allMatch(line -> line.matches(".*\\.yaml:\\d+:\\d+: .+"));
        assertThat(run.errors()).anyMatch(line -> line.startsWith(first + ":2:1: "));
        assertThat(run.errors()).anyMatch(line -> line.startsWith(second + ":"));
    }

    @Test
    void textsWithoutProblemsAreSaidToBeValid() {
        Run run = Run.of("catalogue", "validate");
        assertThat(run.status()).isZero();
        assertThat(run.lines()).hasSize(2).allMatch(line -> line.endsWith("(built-in): valid"));
    }

    @Test
    void aFolderThatIsNotThereIsAMissingInput() {
        Run run = Run.of("catalogue", "list", "--catalogue", folder.resolve("none"));
        assertThat(run.status()).isEqualTo(66);
        assertThat(run.errors()).hasSize(1);
        assertThat(run.err()).contains("no such folder");
    }

    @Test
    void pluginsAreListedWithOriginAndVersion() {
        Run run = Run.of("plugins");
        assertThat(run.status()).isZero();
        assertThat(run.lines().get(0)).startsWith("kind").contains("origin").contains("version");
    }
}
