// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SimulateTest {
    @TempDir
    private Path folder;

    @Test
    void aScenarioBecomesACaptureWithItsTruthBeside() throws IOException {
        Path csv = Texts.simulate(folder, "yard", Texts.HEALTHY);
        assertThat(Files.readString(csv)).contains("signal1").contains("signal2");
        assertThat(folder.resolve("yard.csv.truth.json")).exists();
    }

    @Test
    void aScenarioWithProblemsIsUnreadableAndWritesNothing() throws IOException {
        Path text = Files.writeString(folder.resolve("bad.yaml"), Texts.HEALTHY.replace("50 kHz", "50 ms"));
        Path csv = folder.resolve("bad.csv");
        Run run = Run.of("simulate", text, "--to", csv);
        assertThat(run.status()).isEqualTo(65);
        assertThat(run.err()).startsWith(text + ":7:");
        assertThat(csv).doesNotExist();
    }

    @Test
    void aMissingScenarioIsAMissingInput() {
        Run run = Run.of("simulate", folder.resolve("none.yaml"), "--to", folder.resolve("x.csv"));
        assertThat(run.status()).isEqualTo(66);
        assertThat(run.err()).contains("none.yaml: no such file").hasLineCount(1);
    }

    @Test
    void aFolderThatDoesNotExistCannotTakeTheCapture() throws IOException {
        Path text = Files.writeString(folder.resolve("yard.yaml"), Texts.HEALTHY);
        Run run = Run.of("simulate", text, "--to", folder.resolve("none").resolve("x.csv"));
        assertThat(run.status()).isEqualTo(73);
        assertThat(run.err()).contains("folder does not exist").hasLineCount(1);
    }

    @Test
    void theScenarioIsNeverOverwritten() throws IOException {
        Path text = Files.writeString(folder.resolve("yard.yaml"), Texts.HEALTHY);
        Run run = Run.of("simulate", text, "--to", folder.resolve(".").resolve("yard.yaml"));
        assertThat(run.status()).isEqualTo(64);
        assertThat(run.err()).contains("is also an input").hasLineCount(1);
        assertThat(text).hasContent(Texts.HEALTHY);
    }

    @Test
    void quietLeavesOnlyErrors() throws IOException {
        Path text = Files.writeString(folder.resolve("yard.yaml"), Texts.HEALTHY);
        Run run = Run.of("simulate", text, "--to", folder.resolve("x.csv"), "--quiet");
        assertThat(run.status()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).isEmpty();
    }
}
