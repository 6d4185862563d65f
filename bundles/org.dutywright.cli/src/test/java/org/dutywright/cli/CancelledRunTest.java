// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs that are told to stop before their first sample: each command must notice by itself. */
final class CancelledRunTest {
    @TempDir
    private Path folder;

    private Path csv;

    @BeforeEach
    void simulate() throws IOException {
        csv = Texts.simulate(folder, "yard", Texts.HEALTHY);
    }

    private void assertCancelled(String... words) throws IOException {
        Path kept = Files.writeString(folder.resolve("kept"), "older");
        List<String> before = names();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Cancellation cancellation = new Cancellation();
        cancellation.ask();
        int status = Main.run(words, Run.stream(out), Run.stream(err), cancellation, false, ErrorLog.in(folder));
        assertThat(status).isEqualTo(130);
        assertThat(out.size()).isZero();
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("cancelled").hasLineCount(1);
        assertThat(kept).hasContent("older");
        assertThat(names()).isEqualTo(before);
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void measureStops() throws IOException {
        String kept = folder.resolve("kept").toString();
        assertCancelled("measure", csv.toString(), "--json", kept);
        assertCancelled("measure", csv.toString(), "--json", "-");
    }

    @Test
    void checkStops() throws IOException {
        String kept = folder.resolve("kept").toString();
        assertCancelled("check", csv.toString(), "--sensor", "twin-pedal-200", "--json", kept);
    }

    @Test
    void simulateStops() throws IOException {
        String kept = folder.resolve("kept").toString();
        assertCancelled("simulate", folder.resolve("yard.yaml").toString(), "--to", kept);
    }
}
