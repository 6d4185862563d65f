// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.CannotCreateException;
import org.dutywright.capture.UnreadableException;
import org.dutywright.text.Mark;
import org.dutywright.text.Problem;
import org.dutywright.text.ProblemsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each way a command can end has its status and its line. */
final class FailuresTest {
    @TempDir
    private Path folder;

    private String said = "";

    private int report(Throwable error) {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Failures.report(error, "dutywright measure", Run.stream(err), ErrorLog.in(folder));
        said = err.toString(StandardCharsets.UTF_8);
        return status;
    }

    @Test
    void unreadableDataIs65WithThePlace() {
        assertThat(report(new UnreadableException(
                        Path.of("yard.csv"), "line 3, column 2", "'x' is no number", "mend it")))
                .isEqualTo(65);
        assertThat(said).isEqualTo("yard.csv, line 3, column 2: 'x' is no number; mend it" + System.lineSeparator());
    }

    @Test
    void problemsOfATextAre65OneALine() {
        Problem first = new Problem("a.yaml", new Mark(1, 2), "first");
        Problem second = new Problem("a.yaml", new Mark(3, 4), "second");
        assertThat(report(new ProblemsException(List.of(first, second)))).isEqualTo(65);
        assertThat(said.lines()).containsExactly("a.yaml:1:2: first", "a.yaml:3:4: second");
    }

    @Test
    void aMissingFileIs66() {
        assertThat(report(new NoSuchFileException("yard.csv"))).isEqualTo(66);
        assertThat(said).contains("yard.csv: no such file").hasLineCount(1);
    }

    @Test
    void anOutputThatCannotBeMadeIs73() {
        assertThat(report(new CannotCreateException(Path.of("out.json"), "the disk is full")))
                .isEqualTo(73);
        assertThat(said).contains("out.json").contains("the disk is full").hasLineCount(1);
    }

    @Test
    void cancellingIs130() {
        assertThat(report(new CancelledException())).isEqualTo(130);
        assertThat(said).contains("cancelled").hasLineCount(1);
    }

    @Test
    void anInternalErrorIs70WithItsTraceInTheLogOnly() throws IOException {
        assertThat(report(new IllegalStateException("mean is NaN\nwhere a number belongs")))
                .isEqualTo(70);
        Path log = folder.resolve("dutywright.log");
        assertThat(said)
                .contains("internal error: IllegalStateException: mean is NaN where a number belongs")
                .contains(log.toString())
                .doesNotContain("at org.dutywright")
                .hasLineCount(1);
        assertThat(Files.readString(log)).contains("at org.dutywright").contains("dutywright measure");
    }

    @Test
    void theLogGrowsAtItsEnd() throws IOException {
        report(new IllegalStateException("first"));
        report(new IllegalStateException("second"));
        assertThat(Files.readString(folder.resolve("dutywright.log")))
                .contains("first")
                .contains("second");
    }

    @Test
    void anInternalErrorIsSaidEvenWhereNoLogCanBeWritten() throws IOException {
        Path file = Files.createFile(folder.resolve("file"));
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Failures.report(new IllegalStateException("x"), "dutywright", Run.stream(err), ErrorLog.in(file));
        assertThat(status).isEqualTo(70);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("no log could be written")
                .hasLineCount(1);
    }

    @Test
    void theLogLiesInTheStateFolderOfTheUser() {
        ErrorLog log = ErrorLog.ofUser(Map.of("XDG_STATE_HOME", folder.toString()));
        assertThat(log.add("dutywright", new IllegalStateException("x")))
                .contains(folder.resolve("dutywright").resolve("dutywright.log"));
    }
}
