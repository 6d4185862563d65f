// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.dutywright.capture.CannotCreateException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class OutputsTest {
    @TempDir
    private Path folder;

    @Test
    void twoOutputsToOneFileAreRefusedHoweverItIsNamed() throws IOException {
        Files.createDirectory(folder.resolve("sub"));
        Outputs outputs = new Outputs()
                .add("--json", folder.resolve("out"))
                .add("--cycles", folder.resolve("sub").resolve("..").resolve("out"));
        assertThatThrownBy(() -> outputs.check(List.of()))
                .isInstanceOf(CommandFailure.class)
                .hasMessageContaining("--cycles")
                .hasMessageContaining("also the file of --json");
    }

    @Test
    void anOutputThatIsALinkToAnInputIsRefused() throws IOException {
        Path input = Files.createFile(folder.resolve("yard.csv"));
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), input);
        assertThatThrownBy(() -> new Outputs().add("--cycles", link).check(List.of(input)))
                .isInstanceOf(CommandFailure.class)
                .hasMessageContaining("is also an input");
    }

    @Test
    void aFolderIsNoOutput() {
        assertThatThrownBy(() -> new Outputs().add("--json", folder).check(List.of()))
                .isInstanceOf(CannotCreateException.class)
                .hasMessageContaining("name a file in it");
    }

    @Test
    void differentFilesAreFine() {
        Outputs outputs = new Outputs().add("--json", folder.resolve("a")).add("--cycles", folder.resolve("b"));
        assertThatCode(() -> outputs.check(List.of(folder.resolve("c")))).doesNotThrowAnyException();
    }
}
