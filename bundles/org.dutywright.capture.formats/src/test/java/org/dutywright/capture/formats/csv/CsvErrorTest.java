// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.dutywright.capture.formats.csv.CsvText.AT_1_KHZ;
import static org.dutywright.capture.formats.csv.CsvText.channels;
import static org.dutywright.capture.formats.csv.CsvText.file;
import static org.dutywright.capture.formats.csv.CsvText.read;
import static org.dutywright.capture.formats.csv.CsvText.valuesOf;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CsvErrorTest {
    @TempDir
    Path folder;

    private void isRefused(String text, String message) {
        isRefused(text, ReadSettings.none(), message);
    }

    private void isRefused(String text, ReadSettings settings, String message) {
        assertThatThrownBy(() -> read(folder, text, settings))
                .isInstanceOf(UnreadableException.class)
                .hasMessage(folder.resolve("pedal.csv") + message);
    }

    @Test
    void aBadCellIsNamedByLineAndCharacter() {
        isRefused(
                "made by hand\ntime,signal1,signal2\n0,1,2\n1,  abc,2\n2,1,2\n3,1,2\n4,1,2\n",
                ", line 4, column 5: 'abc' is not a number; it stands in 'signal1'; correct the cell, or pick other"
                        + " columns with --channel");
    }

    @Test
    void aBadCellInTheFirstRowIsStillARow() {
        isRefused(
                "time,signal1\n0,x1\n1,2\n2,1\n3,1\n",
                ", line 2, column 3: 'x1' is not a number; it stands in 'signal1'; correct the cell, or pick other"
                        + " columns with --channel");
    }

    // what Java takes for a number, but no instrument writes: suffix, hexadecimal; and what is too large
    @ParameterizedTest
    @ValueSource(strings = {"1f", "2d", "0x1p3", "1e999", "1.2.3", "1,5", "--5", "+", "1 2", "12V", "1e", "e5"})
    void whatIsNoPlainNumberIsRefused(String cell) {
        assertThatThrownBy(() -> read(folder, "time;signal1\n0;1\n1;" + cell + "\n2;1.5\n3;1.5\n4;1.5\n"))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("line 3, column 3: '" + cell + "' is not a number");
    }

    @Test
    void aBadCellBehindQuotesIsNamedByLineAndCell() {
        isRefused(
                "time,note,signal1\n0,\"a\nb\",1\n1,c,oops\n2,c,1\n3,c,1\n",
                ", line 4, cell 3: 'oops' is not a number; it stands in 'signal1'; correct the cell, or pick other"
                        + " columns with --channel");
    }

    @Test
    void longOrUnprintableCellsAreShownShort() {
        String cell = "\u0007" + "x".repeat(500);
        assertThatThrownBy(() -> read(folder, "time,signal1\n0,1\n1," + cell + "\n2,1\n3,1\n4,1\n"))
                .hasMessageContaining("' " + "x".repeat(39) + "…' is not a number");
    }

    @Test
    void aBadCellOfAColumnThatWasNotPickedDoesNoHarm() throws Exception {
        ReadSettings picked =
                new ReadSettings(OptionalDouble.empty(), List.of(new ReadSettings.Pick("#2", "pedal")), Map.of());
        try (Capture capture = read(folder, "time,signal1,signal2\n0,1,2\n1,abc,\n2,,4\n3,1,5\n", picked)) {
            assertThat(channels(capture)).containsExactly("pedal in V");
            assertThat(valuesOf(capture, 0)).containsExactly(2, 4, 5);
        }
    }

    @Test
    void timeThatGoesBackIsNamedByLine() {
        isRefused(
                "time,signal1\n0.5,1\n1.5,2\n1.0,3\n",
                ", line 4, column 1: time goes back from 1.5 to 1.0; split the recording where its time starts anew");
    }

    @Test
    void aTableWithoutTimeIsNamed() {
        isRefused(
                "phase,signal1\n3,1\n1,2\n",
                ", line 1: no column of time was recognised; give the sample rate with --sample-rate HZ, or name the"
                        + " column of time stamps with --time-column");
    }

    @Test
    void moreCellsThanColumnsAreRefused() {
        isRefused(
                "time,signal1\n0,1\n1,2\n2,3,4\n3,3\n4,3\n5,3\n6,3\n7,3\n",
                ", line 4, column 5: the row has 3 cells, the rows before have 2; correct the row");
    }

    @Test
    void filesWithoutATableOfNumbersAreRefused() {
        isRefused("", ": is empty; record or export it again");
        String noTable = ", line 1: holds no table of numbers; export the recording as text (CSV)";
        isRefused("time,signal1\n", noTable);
        isRefused("\n\n\n", noTable);
        isRefused("Dear all,\nthe pedal is fine.\n", noTable);
        isRefused(
                "time,signal1\n0,abc\n1,def\n",
                ", line 2: the table has no column of values beside the time column;" + " export at least one channel");
        isRefused("time,signal1\n0,1\n", ": holds one row of values; record again");
    }

    @Test
    void binaryFilesAreRefusedAndNotTakenForText() throws Exception {
        byte[] bytes = new byte[100_000];
        new Random(3).nextBytes(bytes);
        Path file = Files.write(folder.resolve("pedal.bin"), bytes);
        CsvCaptureReader reader = new CsvCaptureReader();
        assertThatThrownBy(() -> reader.read(file, ReadSettings.none(), Progress.NONE))
                .isInstanceOf(UnreadableException.class)
                .hasMessage(file + ", byte 0: is no text; export the recording as text (CSV)");
        assertThat(reader.likelihood(bytes)).isZero();
        assertThat(reader.likelihood("a,b\n\0,1\n".getBytes(StandardCharsets.UTF_8)))
                .isZero();
        int prose = reader.likelihood("Dear all\n".getBytes(StandardCharsets.UTF_8));
        assertThat(reader.likelihood("0,1\n1,2".getBytes(StandardCharsets.UTF_8)))
                .isGreaterThan(prose);
        assertThat(prose).isPositive();
    }

    @Test
    void endlessLinesAreRefused() throws Exception {
        String text = "time,signal1\n0,1\n1,1\n2,1\n3," + "1".repeat(2000) + "\n";
        CsvCaptureReader reader = new CsvCaptureReader(new FastRows.Pace(1000, 1, false), 0);
        assertThatThrownBy(() -> reader.read(file(folder, text), ReadSettings.none(), Progress.NONE))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("line 5: is longer than 1000 bytes");
    }

    @Test
    void manyColumnsAreRefused() {
        assertThatThrownBy(() -> read(folder, "1,".repeat(1200) + "1\n", AT_1_KHZ))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("1201 columns");
    }

    @Test
    void filesThatAreNotThereAreLeftToTheCaller() {
        Path file = folder.resolve("missing.csv");
        assertThatThrownBy(() -> new CsvCaptureReader().read(file, ReadSettings.none(), Progress.NONE))
                .isInstanceOf(NoSuchFileException.class);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "signal3| a| there is no column 'signal3'; its columns are signal1, signal2",
                "#3| a| there is no column '#3'; its columns are signal1, signal2",
                "time| a| there is no column 'time'; its columns are signal1, signal2",
            })
    void aPickThatIsNotThereNamesTheColumns(String column, String name, String message) {
        ReadSettings picked =
                new ReadSettings(OptionalDouble.empty(), List.of(new ReadSettings.Pick(column, name)), Map.of());
        isRefused("time,signal1,signal2\n0,1,2\n1,1,2\n", picked, ": " + message);
    }

    @Test
    void aScaleOfNoChannelNamesTheChannels() {
        ReadSettings scaled = new ReadSettings(OptionalDouble.empty(), List.of(), Map.of("signal3", 10.0));
        isRefused(
                "time,signal1,signal2\n0,1,2\n1,1,2\n",
                scaled,
                ": a scale is given for 'signal3', which is no channel; the channels are signal1, signal2");
    }

    @ParameterizedTest
    @ValueSource(strings = {"signal1 (mV)", "signal1", "#1", "SIGNAL1"})
    void columnsArePickedByHeadingNameOrNumberAndScaled(String column) throws Exception {
        ReadSettings settings = new ReadSettings(
                OptionalDouble.empty(),
                List.of(new ReadSettings.Pick("signal2", "second"), new ReadSettings.Pick(column, "first")),
                Map.of("first", 10.0));
        try (Capture capture = read(folder, "time,signal1 (mV),signal2\n0,500,2\n1,250,3\n", settings)) {
            assertThat(channels(capture)).containsExactly("second in V", "first in V");
            assertThat(valuesOf(capture, 0)).containsExactly(2, 3);
            // 500 mV through a probe of 10:1 is 5 V
            assertThat(valuesOf(capture, 1)).containsExactly(5, 2.5);
        }
    }
}
