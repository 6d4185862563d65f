// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A real process that gets a real signal while it writes. */
final class SignalTest {
    private static final long PATIENCE_SECONDS = 60;

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"INT", "TERM"})
    void aSignalCancelsWithStatus130AndLeavesNothingHalfWritten(String signal) throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/bin/kill")), "no /bin/kill to send signals with");
        Path target = Files.writeString(folder.resolve("yard.csv"), "kept");
        Process process = start(target);
        try {
            assumeTrue(obeys(process, signal), "SIG" + signal + " is ignored in everything this test starts");
            awaitSomethingWritten(process);
            new ProcessBuilder("/bin/kill", "-" + signal, Long.toString(process.pid()))
                    .start()
                    .waitFor();
            assertThat(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        assertThat(process.exitValue()).isEqualTo(130);
        assertThat(folder.resolve("err")).content().contains("cancelled").hasLineCount(1);
        assertThat(target).hasContent("kept");
        assertThat(names()).containsExactlyInAnyOrder("err", "out", "scenario.yaml", "yard.csv");
    }

    // Ten hours: far longer than the test waits for its first bytes.
    private Process start(Path target) throws IOException {
        Path scenario = Files.writeString(folder.resolve("scenario.yaml"), Texts.scenario("36000 s", ""));
        List<String> command = List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "simulate",
                scenario.toString(),
                "--to",
                target.toString());
        return new ProcessBuilder(command)
                .redirectOutput(folder.resolve("out").toFile())
                .redirectError(folder.resolve("err").toFile())
                .start();
    }

    private void awaitSomethingWritten(Process process) throws IOException, InterruptedException {
        try (WatchService watch = folder.getFileSystem().newWatchService()) {
            folder.register(watch, StandardWatchEventKinds.ENTRY_CREATE, StandardWatchEventKinds.ENTRY_MODIFY);
            while (partial() == 0) {
                WatchKey key = watch.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
                assertThat(process.isAlive())
                        .as("it runs until it is told to stop")
                        .isTrue();
                assertThat(key).as("something is written in time").isNotNull();
                key.reset();
            }
        }
    }

    private long partial() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".part"))
                    .mapToLong(SignalTest::size)
                    .sum();
        }
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).toList();
        }
    }

    // A shell that starts jobs in the background may have them ignore SIGINT; Java then leaves it ignored.
    private static boolean obeys(Process process, String signal) throws IOException {
        Path status = Path.of("/proc", Long.toString(process.pid()), "status");
        if (!Files.exists(status)) {
            return true;
        }
        int number = signal.equals("INT") ? 2 : 15;
        String ignored = Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("SigIgn:"))
                .findFirst()
                .orElse("SigIgn:\t0")
                .substring("SigIgn:".length())
                .strip();
        return (Long.parseUnsignedLong(ignored, 16) >> (number - 1) & 1) == 0;
    }

    @Test
    void aRunThatIsOverKeepsItsStatusWhenTheMachineShutsDown() throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Main.class.getName(),
                        "nonsense")
                .redirectErrorStream(true)
                .start();
        assertThat(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isEqualTo(64);
    }
}
