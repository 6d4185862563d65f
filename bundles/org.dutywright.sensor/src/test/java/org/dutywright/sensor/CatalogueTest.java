// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Set;
import org.dutywright.text.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CatalogueTest {
    @TempDir
    private Path folder;

    private void write(String name, String id) throws IOException {
        Files.writeString(
                folder.resolve(name),
                "schema: dutywright.sensor/1\nid: " + id + "\ntitle: A\nchannels:\n  - name: one\n");
    }

    @Test
    void theBuiltInSensorsSayThatTheyAreInvented() {
        assertThat(Catalogue.builtIn().entries()).hasSize(2).allSatisfy(entry -> {
            assertThat(entry.origin()).isEqualTo(Catalogue.BUILT_IN);
            assertThat(entry.sensor().origin().document()).contains("invented");
        });
    }

    @Test
    void aFolderAddsItsSensorsAndABrokenFileHidesNone() throws IOException {
        write("b.yaml", "second");
        write("a.yml", "first");
        Files.writeString(folder.resolve("broken.yaml"), "schema: dutywright.sensor/1\n");
        Files.writeString(folder.resolve("notes.txt"), "no sensor");
        Catalogue catalogue = Catalogue.builtIn().with(folder);
        assertThat(catalogue.entries())
                .extracting(entry -> entry.sensor().id())
                .containsExactly("twin-pedal-200", "single-throttle-500", "first", "second");
        assertThat(catalogue.problems())
                .extracting(Problem::file)
                .containsOnly(folder.resolve("broken.yaml").toString());
        assertThat(catalogue.find("first").orElseThrow().origin())
                .isEqualTo(folder.resolve("a.yml").toString());
    }

    @Test
    void anIdThatIsThereAlreadyIsRefusedWithBothPlaces() throws IOException {
        write("mine.yaml", "twin-pedal-200");
        Catalogue catalogue = Catalogue.builtIn().with(folder);
        assertThat(catalogue.entries()).hasSize(2);
        assertThat(catalogue.problems())
                .extracting(Problem::toString)
                .containsExactly(folder.resolve("mine.yaml")
                        + ":2:5: the sensor 'twin-pedal-200' is there already, built-in; give this one another id");
    }

    @Test
    void twoFilesOfOneIdAreBothNamed() throws IOException {
        write("a.yaml", "same");
        write("b.YAML", "same");
        Catalogue catalogue = Catalogue.builtIn().with(folder);
        assertThat(catalogue.find("same").orElseThrow().origin())
                .isEqualTo(folder.resolve("a.yaml").toString());
        assertThat(catalogue.problems())
                .extracting(Problem::toString)
                .containsExactly(folder.resolve("b.YAML") + ":2:5: the sensor 'same' is there already, "
                        + folder.resolve("a.yaml") + "; give this one another id");
    }

    @Test
    void aFolderThatIsAddedTwiceAddsNothingNew() throws IOException {
        write("a.yaml", "mine");
        Files.writeString(folder.resolve("broken.yaml"), "- 1\n");
        Catalogue once = Catalogue.builtIn().with(folder);
        Catalogue twice = once.with(folder);
        assertThat(twice.entries()).isEqualTo(once.entries());
        assertThat(twice.problems()).isEqualTo(once.problems()).hasSize(1);
    }

    @Test
    void aFileThatCannotBeReadHidesNone() throws IOException {
        assumeTrue(
                Files.getFileStore(folder).supportsFileAttributeView(PosixFileAttributeView.class),
                "the file system has no permissions to take away");
        write("a.yaml", "hidden");
        write("b.yaml", "healthy");
        Path hidden = folder.resolve("a.yaml");
        Files.setPosixFilePermissions(hidden, Set.of());
        assumeTrue(!Files.isReadable(hidden), "this user may read every file");
        Catalogue catalogue = Catalogue.builtIn().with(folder);
        assertThat(catalogue.find("healthy")).isPresent();
        assertThat(catalogue.problems())
                .singleElement()
                .asString()
                .startsWith(hidden + ":1:1: this file cannot be read, look at its permissions");
    }

    @Test
    void aMistypedIdGetsTheNearestOne() {
        assertThat(Catalogue.builtIn().hint("twin-pedal-20")).isEqualTo("did you mean 'twin-pedal-200'?");
        assertThat(Catalogue.builtIn().find("twin-pedal-20")).isEmpty();
    }
}
