// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.dutywright.simulation.DemoScenarios;
import org.dutywright.simulation.Expectation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole way, from scenario texts over files to verdicts. */
final class DemoTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    private Path folder;

    @Test
    void everyDemonstrationCaptureGetsTheVerdictThatItsScenarioExpectsForTheReasonItNames() throws IOException {
        Path target = folder.resolve("new").resolve("demo");
        Run run = Run.of("demo", "--to", target);
        assertThat(run.out()).doesNotContain("UNEXPECTED");
        assertThat(run.status()).isZero();
        assertThat(run.lines()).hasSameSizeAs(DemoScenarios.all());
        for (DemoScenarios.Demo demo : DemoScenarios.all()) {
            assertThat(run.lines())
                    .anyMatch(line -> line.matches(demo.name() + ": (conforms|does not conform: .+|inconclusive: .+)"));
            check(
                    demo,
                    MAPPER.readTree(target.resolve(demo.name() + ".check.json").toFile()));
        }
        assertThat(Files.readAllLines(target.resolve("summary.txt"))).isEqualTo(run.lines());
    }

    private static void check(DemoScenarios.Demo demo, JsonNode document) {
        Expectation expected = demo.scenario().expectation().orElseThrow();
        assertThat(document.get("verdict").asText()).as(demo.name()).isEqualTo(expected.verdict());
        List<String> carriers = new ArrayList<>();
        String result = expected.verdict().equals("inconclusive") ? "inconclusive" : "fail";
        for (JsonNode line : document.get("lines")) {
            if (line.get("result").asText().equals(result)) {
                carriers.add(line.get("item").asText());
            }
        }
        if (document.path("agreement").path("wouldFlag").asBoolean()) {
            carriers.add("agreement");
        }
        for (String because : expected.because()) {
            // "signal1.transition" stands for its rise and its fall
            assertThat(carriers).as(demo.name()).anyMatch(item -> (item + ".").startsWith(because + "."));
        }
    }

    @Test
    void aFileIsNoFolder() throws IOException {
        Path file = Files.createFile(folder.resolve("file"));
        Run run = Run.of("demo", "--to", file);
        assertThat(run.status()).isEqualTo(73);
        assertThat(run.err()).contains("name a folder").hasLineCount(1);
    }
}
