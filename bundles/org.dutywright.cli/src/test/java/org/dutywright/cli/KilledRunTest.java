// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs of their own process that end in the middle of writing: by a signal that nothing can catch, and by a disk that is full. */
final class KilledRunTest {
    /** More values than stay in memory, so that there are temporary files of samples as well. */
    private static final int ROWS = 800_000;

    @TempDir
    private Path folder;

    @Test
    void aKilledRunLeavesTheOldFileAndATemporaryOneThatTheNextRunRemoves() throws Exception {
        Path csv = recording();
        Path temporary = Files.createDirectory(folder.resolve("tmp"));
        Path out = Files.createDirectory(folder.resolve("out"));
        Path target = Files.writeString(out.resolve("old.csv"), "old");
        try (WatchService watch = out.getFileSystem().newWatchService()) {
            out.register(watch, StandardWatchEventKinds.ENTRY_CREATE);
            Process process = new ProcessBuilder(
                            command(temporary, "convert", csv.toString(), "--to", target.toString()))
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("log").toFile())
                    .start();
            // the temporary file shows that the samples were read and are being written
            WatchKey created = watch.poll(120, TimeUnit.SECONDS);
            process.destroyForcibly().waitFor();
            assertThat(created).as(Files.readString(folder.resolve("log"))).isNotNull();
            assertThat(process.exitValue()).isNotZero();
        }

        assertThat(target).hasContent("old");
        assertThat(names(out)).hasSize(2).anyMatch(name -> name.matches("\\.old\\.csv\\.\\d+-\\d+\\.part"));
        assertThat(names(temporary)).noneMatch(name -> name.endsWith(".spill"));

        assertThat(Run.of("convert", csv, "--to", target, "--until", "0.001").status())
                .isZero();
        assertThat(names(out)).containsExactly("old.csv");
        assertThat(Files.readAllLines(target)).startsWith("time (s),signal1 (V),signal2 (V)");
    }

    @Test
    void aDiskThatIsFullIs73AndLeavesTheOldFileAsItWas() throws Exception {
        Path bash = Path.of("/bin/bash");
        assumeTrue(Files.isExecutable(bash), "no bash here to limit the size of files");
        Path csv = recording();
        Path temporary = Files.createDirectory(folder.resolve("tmp"));
        Path out = Files.createDirectory(folder.resolve("out"));
        Path target = Files.writeString(out.resolve("old.arrow"), "old");
        // a limit of 2 MiB a file stands for a disk that is full: either way a write fails in the middle; the samples
        // themselves stay in memory
        List<String> words = new ArrayList<>(List.of(bash.toString(), "-c", "ulimit -f 2048; exec \"$@\"", "limited"));
        words.addAll(
                command(temporary, "convert", csv.toString(), "--to", target.toString(), "--channel", "signal1=a"));
        Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(process.waitFor()).as(said).isEqualTo(73);
        assertThat(said.strip().lines().toList().getLast()).startsWith(target + ": cannot be written: ");
        assertThat(target).hasContent("old");
        assertThat(names(out)).containsExactly("old.arrow");
    }

    private static List<String> command(Path temporary, String... words) {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("-Djava.io.tmpdir=" + temporary);
        command.add("-cp");
        command.add(System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
        command.add(Main.class.getName());
        command.addAll(List.of(words));
        return command;
    }

    private Path recording() throws IOException {
        Path csv = folder.resolve("my.csv");
        try (Writer text = Files.newBufferedWriter(csv)) {
            text.write("time (ms),signal1 (V),signal2 (V)\n");
            for (int i = 0; i < ROWS; i++) {
                text.write(i / 100 + "." + i / 10 % 10 + i % 10 + (i % 500 < 150 ? ",4.9,0.1\n" : ",0.1,4.9\n"));
            }
        }
        return csv;
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).toList();
        }
    }
}
