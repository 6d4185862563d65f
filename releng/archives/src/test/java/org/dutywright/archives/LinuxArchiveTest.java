// SPDX-License-Identifier: EPL-2.0
package org.dutywright.archives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The archive for Linux that brings its own Java is unpacked and started, as a user does it. */
final class LinuxArchiveTest {
    @TempDir
    private static Path unpacked;

    @TempDir
    private Path work;

    private static Path home;

    @BeforeAll
    static void unpack() throws Exception {
        assumeTrue(
                System.getProperty("os.name").equals("Linux")
                        && System.getProperty("os.arch").equals("amd64"),
                "the archive for Linux x86_64 starts only there");
        Path archive = Checkout.archive("linux-x86_64-with-java.tar.gz");
        assertThat(run(unpacked, "tar", "xzf", archive.toString())).isZero();
        home = unpacked.resolve("dutywright-" + System.getProperty("dutywright.version"));
    }

    @Test
    void it_says_its_version() throws Exception {
        assertThat(run(work, command("dutywright"), "--version")).isZero();
        assertThat(output()).startsWith("Dutywright");
    }

    @Test
    void the_command_line_works_from_another_folder_and_through_a_link() throws Exception {
        Path link = Files.createSymbolicLink(work.resolve("dw"), home.resolve("dutywright"));

        assertThat(run(work, link.toString(), "catalogue", "list")).isZero();
        assertThat(output()).contains("twin-pedal-200");
    }

    @Test
    void it_measures_a_capture_with_every_library_at_hand() throws Exception {
        Files.writeString(work.resolve("square.csv"), square());

        assertThat(run(work, command("dutywright"), "measure", "square.csv", "--json", "-"))
                .isZero();
        assertThat(output()).contains("dutywright.measure/1").contains("\"cycles\"");
    }

    @Test
    void an_exit_status_comes_through() throws Exception {
        // sysexits.h: 66 is an input that is not there.
        assertThat(run(work, command("dutywright"), "measure", "nowhere.csv")).isEqualTo(66);
    }

    @Test
    void the_workbench_opens_its_window_and_closes_without_an_error() throws Exception {
        assumeTrue(System.getenv("DISPLAY") != null, "a window needs a screen, and DISPLAY names none");
        Path workspace = work.resolve("workspace");
        Process process = start(work, command("dutywright-workbench"), "-data", workspace.toString());
        try {
            Screen.awaitWindow(process, Checkout.root().resolve("releng/archives/target/screens/archive.png"));
        } finally {
            process.descendants().forEach(ProcessHandle::destroy);
        }

        assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
        assertThat(errorsIn(workspace.resolve(".metadata/.log"))).isEmpty();
    }

    /** Two channels of 200 Hz and 50 %, 40 ms long, a sample each 0.1 ms. */
    private static String square() {
        StringBuilder text = new StringBuilder("time (s),signal1 (V),signal2 (V)\n");
        for (int sample = 0; sample < 400; sample++) {
            boolean high = sample / 25 % 2 == 0;
            text.append(String.format(Locale.ROOT, "%.4f,%s,%s%n", sample / 1e4, high ? "5" : "0", high ? "0" : "5"));
        }
        return text.toString();
    }

    /** Entries of severity 4 are errors. */
    private static List<String> errorsIn(Path log) throws IOException {
        return Files.notExists(log)
                ? List.of()
                : Files.readAllLines(log).stream()
                        .filter(line -> line.matches("!ENTRY \\S+ 4 .*"))
                        .toList();
    }

    private static String command(String name) {
        return home.resolve(name).toString();
    }

    private String output() throws IOException {
        return Files.readString(work.resolve("output"), StandardCharsets.UTF_8);
    }

    private static int run(Path folder, String... command) throws Exception {
        Process process = start(folder, command);
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        return process.exitValue();
    }

    /** Without the Java of this test, so that the archive's own is what runs. */
    private static Process start(Path folder, String... command) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(folder.resolve("output").toFile())
                .redirectError(folder.resolve("errors").toFile());
        builder.environment().remove("JAVA_HOME");
        return builder.start();
    }
}
