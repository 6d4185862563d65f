// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFileTest {
    @TempDir
    Path folder;

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static OutputFile.Content text(String text) {
        return stream -> stream.write(text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void theContentTakesThePlaceOfAnOlderFile() throws IOException {
        Path target = folder.resolve("result.json");
        Files.writeString(target, "older");
        OutputFile.write(target, text("new"));
        assertThat(target).hasContent("new");
        assertThat(names()).containsExactly("result.json");
    }

    @Test
    void nothingIsSeenOfAFileThatIsBeingWritten() throws IOException {
        Path target = folder.resolve("result.json");
        Files.writeString(target, "older");
        OutputFile.write(target, stream -> {
            stream.write(new byte[1 << 20]);
            assertThat(target).hasContent("older");
        });
        assertThat(target).hasSize(1 << 20);
    }

    @Test
    void cancellingLeavesTheOlderFileAndNothingElse() throws IOException {
        Path target = folder.resolve("result.json");
        Files.writeString(target, "older");
        assertThatThrownBy(() -> OutputFile.write(target, stream -> {
                    stream.write(new byte[1 << 20]);
                    throw new CancelledException();
                }))
                .isInstanceOf(CancelledException.class);
        assertThat(target).hasContent("older");
        assertThat(names()).containsExactly("result.json");
    }

    @Test
    void anErrorOfTheContentIsNotTakenForOneOfTheTarget() throws IOException {
        IOException own = new IOException("cannot read the samples");
        assertThatThrownBy(() -> OutputFile.write(folder.resolve("a.csv"), stream -> {
                    throw own;
                }))
                .isSameAs(own);
        assertThat(names()).isEmpty();
    }

    @Test
    void aTargetThatCannotBeCreatedIsNamed() {
        Path inNoFolder = folder.resolve("missing").resolve("a.csv");
        assertThatThrownBy(() -> OutputFile.write(inNoFolder, text("x")))
                .isInstanceOf(CannotCreateException.class)
                .hasMessage(inNoFolder + ": cannot be written: its folder does not exist; make the folder first");
        assertThatThrownBy(() -> OutputFile.write(folder, text("x")))
                .isInstanceOf(CannotCreateException.class)
                .hasMessageContaining("it is a folder");
    }

    @Test
    void temporaryFilesOfDeadProcessesAreRemovedAndOthersKept() throws IOException {
        // process ids are far below this number on every system
        String stale = ".a.csv.999999999999-1.part";
        String alive = ".a.csv." + ProcessHandle.current().pid() + "-1.part";
        String other = ".b.csv.999999999999-1.part";
        for (String name : List.of(stale, alive, other)) {
            Files.writeString(folder.resolve(name), "half");
        }
        OutputFile.write(folder.resolve("a.csv"), text("x"));
        assertThat(names()).containsExactlyInAnyOrder(alive, other, "a.csv");
    }

    @Test
    void aSymbolicLinkStaysALink() throws IOException {
        Path real = Files.writeString(folder.resolve("real.csv"), "older");
        Path link = folder.resolve("link.csv");
        try {
            Files.createSymbolicLink(link, real);
        } catch (IOException | UnsupportedOperationException e) {
            assumeTrue(false, "no symbolic links here: " + e.getMessage());
        }
        OutputFile.write(link, text("new"));
        assertThat(link).isSymbolicLink();
        assertThat(real).hasContent("new");
    }

    @Test
    void aDeviceIsWrittenInPlace() throws IOException {
        Path device = Path.of("/dev/null");
        assumeTrue(Files.exists(device), "no /dev/null here");
        OutputFile.write(device, text("x"));
        assertThat(Files.isRegularFile(device)).isFalse();
    }
}
