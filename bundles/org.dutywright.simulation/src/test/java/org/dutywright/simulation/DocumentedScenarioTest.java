// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.dutywright.text.ProblemsException;
import org.junit.jupiter.api.Test;

class DocumentedScenarioTest {

    @Test
    void theExampleOfTheDocumentationIsAScenario() throws IOException, ProblemsException {
        String source = Files.readString(Path.of("src/main/java/org/dutywright/simulation/package-info.java"));
        String example = source.substring(source.indexOf("<pre>{@code") + 12, source.indexOf("}</pre>"))
                .lines()
                .map(line -> line.replaceFirst("^ \\* ?", ""))
                .collect(Collectors.joining("\n"));
        Scenario scenario = Scenario.parse("package-info.java", example);
        assertThat(scenario.id()).isEqualTo("bench-1");
        assertThat(scenario.faults()).hasSize(2);
        assertThat(scenario.expectation()).isPresent();
    }
}
