// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.dutywright.text.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CatalogueTest {
    @TempDir
    private Path folder;

    private void write(String name, String id) throws IOException {
        Files.writeString(
                folder.resolve(name), "schema: dutywright.sensor/1\nid: " + id + "\nchannels:\n  - name: one\n");
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
    void aMistypedIdGetsTheNearestOne() {
        assertThat(Catalogue.builtIn().hint("twin-pedal-20")).isEqualTo("did you mean 'twin-pedal-200'?");
        assertThat(Catalogue.builtIn().find("twin-pedal-20")).isEmpty();
    }
}
