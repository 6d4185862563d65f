// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.workbench.WindowWords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the core says is said in the words of the window, without options of a command line. */
final class WindowWordsTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "time (s),signal1 (V)/0,1/1,x/2,1|correct the cell, or delete its column",
                "signal1 (V)/1/0/1/0|head the column of time stamps 'time (s)', or export the recording with time stamps"
            })
    void a_file_that_cannot_be_read_gets_advice_for_the_window(String text, String advice) throws IOException {
        Path file = Files.writeString(folder.resolve("broken.csv"), text.replace('/', '\n'));

        UnreadableException thrown = catchThrowableOfType(
                UnreadableException.class, () -> Captures.open(List.of(file), ReadSettings.none(), Progress.NONE));

        assertThat(thrown.getMessage()).contains("--");
        assertThat(WindowWords.of(thrown.getMessage())).endsWith("; " + advice).doesNotContain("--");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "no supply channel was recorded and none given by --supply VOLTS",
                "% of supply needs a supply channel or --supply VOLTS",
                "it is not known whether the sensor was released; say so with --position",
                "no channel of the capture stands for signal1 (it has a, b); name one with --channel COLUMN=signal1",
                "the swing is ten times too small; a scale that would fit is --scale signal1=10"
            })
    void no_option_of_the_command_line_is_named(String reason) {
        assertThat(WindowWords.of(reason)).isNotEqualTo(reason).doesNotContain("--");
    }

    @Test
    void the_rest_is_left_as_it_is() {
        String line = "signal1.duty   17.003 \u00b1 0.012 %   pass; from 10 % to 90 %";

        assertThat(WindowWords.of(line)).isEqualTo(line);
    }
}
