// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import org.dutywright.capture.Progress;
import org.dutywright.sensor.Catalogue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoScenariosTest {

    @TempDir
    Path folder;

    @Test
    void everyOneSaysThatItIsInventedAndWhatACheckShouldFind() {
        Set<String> verdicts = new HashSet<>();
        Catalogue catalogue = Catalogue.builtIn();
        for (DemoScenarios.Demo demo : DemoScenarios.all()) {
            Scenario scenario = demo.scenario();
            assertThat(scenario.id()).isEqualTo(demo.name());
            assertThat(demo.text()).startsWith("# Invented");
            assertThat(scenario.note()).startsWith("Invented.");
            assertThat(scenario.title()).startsWith("Harrow & Tern works yard, ");
            assertThat(catalogue.find(scenario.sensor())).isPresent();
            assertThat(scenario.expectation()).isPresent();
            verdicts.add(scenario.expectation().get().verdict());
        }
        assertThat(verdicts).containsExactlyInAnyOrder("conforms", "does-not-conform", "inconclusive");
    }

    @Test
    void everyOneIsWrittenWithATruthThatListsItsFaults() throws IOException {
        for (DemoScenarios.Demo demo : DemoScenarios.all()) {
            Path csv = folder.resolve(demo.name() + ".csv");
            Simulator.write(demo.scenario(), csv, Progress.NONE);
            JsonNode truth =
                    new ObjectMapper().readTree(Simulator.truthFile(csv).toFile());
            assertThat(truth.get("scenario").asText()).isEqualTo(demo.name());
            assertThat(truth.get("faults")).hasSameSizeAs(demo.scenario().faults());
            assertThat(truth.get("expect").get("verdict").asText())
                    .isEqualTo(demo.scenario().expectation().orElseThrow().verdict());
            try (var lines = Files.lines(csv)) {
                assertThat(lines.count())
                        .isEqualTo(truth.get("recording").get("samples").asLong() + 1);
            }
            Files.delete(csv);
        }
    }
}
