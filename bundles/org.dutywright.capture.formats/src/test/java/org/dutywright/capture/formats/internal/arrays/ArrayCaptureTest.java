// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal.arrays;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntUnaryOperator;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Source;
import org.dutywright.capture.TimeSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.dutywright.units.ScaledUnit;
import org.junit.jupiter.api.Test;

/** What is decided about named arrays, on arrays that lie in no file. */
class ArrayCaptureTest {
    private static final Path FILE = Path.of("made.up");

    private final ArrayContents contents = new ArrayContents(FILE, '/');

    /** An array whose element in row i of column k is a function of i, plus k. */
    private record Made(String path, Kind kind, int rowCount, int columns, IntUnaryOperator values)
            implements NumberArray {
        @Override
        public long rows() {
            return rowCount;
        }

        @Override
        public long heldRows() {
            return rowCount;
        }

        @Override
        public void read(long firstRow, int count, double[][] target) {
            for (int column = 0; column < columns; column++) {
                for (int i = 0; i < count; i++) {
                    target[column][i] = values.applyAsInt((int) firstRow + i) + column;
                }
            }
        }
    }

    private void add(String path, int rows, int columns, IntUnaryOperator values) {
        contents.arrays().add(new Made(path, NumberArray.Kind.DOUBLE, rows, columns, values));
    }

    private void counts(String path, int rows) {
        contents.arrays().add(new Made(path, NumberArray.Kind.COUNT, rows, 1, i -> i % 2));
    }

    private Capture read(ReadSettings settings) throws Exception {
        return ArrayCapture.read(contents, settings, new Source(FILE, "0".repeat(64)), Progress.NONE);
    }

    private Capture read() throws Exception {
        return read(ReadSettings.none());
    }

    @Test
    void eachGroupHasItsOwnTimeAndTheLargestIsTaken() throws Exception {
        add("small/t", 10, 1, i -> i);
        add("small/signal1", 10, 1, i -> i % 2);
        add("large/t", 20, 1, i -> 2 * i);
        add("large/signal1", 20, 1, i -> i % 2);
        add("large/deep/signal2", 20, 1, i -> i % 3);
        try (Capture capture = read()) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal1 in V", "deep/signal2 in V");
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(2);
            assertThat(capture.guessed())
                    .containsEntry("arrays not used", "small/t, small/signal1, of another length or time");
        }
    }

    @Test
    void twoRecordingsOfOneLengthStayApartByTheirTime() throws Exception {
        add("first/t", 10, 1, i -> i);
        add("first/signal1", 10, 1, i -> i % 2);
        add("second/t", 10, 1, i -> 3 * i);
        add("second/signal1", 10, 1, i -> i % 2);
        try (Capture capture = read(CaptureValues.pick("second/signal1"))) {
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(3);
        }
        try (Capture capture = read()) {
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(1);
        }
    }

    @Test
    void aPickThatNoRecordingHasNamesTheChannelsOfTheFirst() {
        add("t", 10, 1, i -> i);
        add("signal1", 10, 1, i -> i % 2);
        add("other", 7, 1, i -> i % 2);
        assertThatThrownBy(() -> read(CaptureValues.pick("signal9")))
                .isInstanceOf(UnreadableException.class)
                .hasMessage("made.up: there is no column 'signal9'; its columns are signal1");
    }

    @Test
    void aStepAndAStartWithUnitsCountTheTime() throws Exception {
        add("ch1/data", 10, 1, i -> i % 2);
        add("ch2/data", 10, 1, i -> i % 3);
        contents.facts().number("ch1", "x_increment (us)", 20);
        contents.facts().number("ch2", "x_increment (us)", 20);
        contents.facts().number("", "t0", -4);
        contents.facts().text("t0", "units", "ms");
        try (Capture capture = read()) {
            assertThat(CaptureValues.channels(capture)).containsExactly("ch1 in V", "ch2 in V");
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(2e-5);
            assertThat(CaptureValues.secondsOf(capture)[0]).isEqualTo(-0.004);
        }
    }

    @Test
    void aNumberOf32BitsIsTakenAsWhatItWasRoundedFrom() {
        assertThat(Facts.beforeRounding(1e-5f)).isEqualTo(1e-5);
        assertThat(Facts.beforeRounding(250f)).isEqualTo(250);
        // a step of 2 to the power of -20 is exact in 32 bits, its shortest decimal is not
        assertThat(Facts.beforeRounding(0x1p-20f)).isEqualTo(0x1p-20);
    }

    @Test
    void aRateThatStandsElsewhereIsTakenIfTheFileHasNoOther() throws Exception {
        add("data/signal1", 10, 1, i -> i % 2);
        contents.facts().number("setup/clock", "Sampling_Rate_kHz", 5);
        try (Capture capture = read()) {
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(2e-4);
            assertThat(capture.guessed())
                    .containsEntry("sample rate found", "5000.0 Hz, from setup/clock/Sampling_Rate_kHz");
        }
    }

    @Test
    void twoDifferentRatesElsewhereSayNothing() {
        add("data/signal1", 10, 1, i -> i % 2);
        contents.facts().number("a", "fs", 5);
        contents.facts().number("b", "fs", 6);
        assertThatThrownBy(this::read)
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("holds nothing that says the time of array data/signal1")
                .hasMessageContaining("--sample-rate HZ");
    }

    @Test
    void aRateThatIsGivenCountsBeforeOneInTheFile() throws Exception {
        add("signal1", 10, 1, i -> i % 2);
        contents.facts().number("", "fs", 5);
        try (Capture capture = read(CaptureValues.at(50))) {
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(0.02);
        }
    }

    @Test
    void theFirstColumnIsTimeIfItRisesAndNothingElseSaysTheTime() throws Exception {
        add("table", 10, 3, i -> i);
        try (Capture capture = read()) {
            assertThat(CaptureValues.channels(capture)).containsExactly("table2 in V", "table3 in V");
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(1);
        }
    }

    @Test
    void theUserSaysWhichArrayIsTimeAndWhatItCounts() throws Exception {
        add("clock", 10, 1, i -> 2 * i);
        add("signal1", 10, 1, i -> i % 2);
        add("table", 10, 2, i -> 3 * i);
        try (Capture capture = read(time("clock", "ms"))) {
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(0.002);
            assertThat(CaptureValues.channels(capture)).containsExactly("signal1 in V", "table1 in V", "table2 in V");
        }
        try (Capture capture = read(time("#4", "s"))) {
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(3);
        }
        assertThatThrownBy(() -> read(time("watch", "s")))
                .hasMessage("made.up: there is no column 'watch' of time; "
                        + "its columns are clock, signal1, table1, table2");
        assertThatThrownBy(() -> read(time(TimeSettings.NONE, "s"))).hasMessageContaining("holds nothing that says");
    }

    @Test
    void whatWasDecidedReadsTheSameAgain() throws Exception {
        add("run/clock (ms)", 10, 1, i -> 2 * i);
        add("run/signal1", 10, 1, i -> i % 2);
        add("other/signal1", 8, 1, i -> i % 2);
        contents.facts().number("other", "fs", 5);
        for (ReadSettings settings : List.of(time("clock", "ms"), CaptureValues.pick("other/signal1"))) {
            try (Capture first = read(settings);
                    Capture again = read(first.asRead())) {
                assertThat(again.channels()).isEqualTo(first.channels());
                assertThat(CaptureValues.secondsOf(again)).containsExactly(CaptureValues.secondsOf(first));
            }
        }
    }

    private static ReadSettings time(String column, String unit) {
        return ReadSettings.none().withTime(new TimeSettings(Optional.of(column), ScaledUnit.parse(unit)));
    }

    @Test
    void unitsComeFromNamesAndFromTextsAround() throws Exception {
        add("t", 10, 1, i -> i);
        add("signal1 (mV)", 10, 1, i -> i % 2);
        add("current", 10, 1, i -> i % 2);
        add("odd", 10, 1, i -> i % 2);
        counts("raw", 10);
        contents.facts().text("current", "units", "mA");
        contents.facts().text("", "odd_unit", "furlongs");
        try (Capture capture = read()) {
            assertThat(CaptureValues.channels(capture))
                    .containsExactly("signal1 in V", "current in A", "odd in V", "raw");
            assertThat(CaptureValues.valuesOf(capture, 1)[1]).isEqualTo(0.001);
            assertThat(capture.guessed()).containsEntry("units not known", "odd: 'furlongs', taken as V");
        }
    }

    @Test
    void wholeNumbersAreVoltsOnceTheUserSaysTheirScale() throws Exception {
        counts("raw", 10);
        ReadSettings settings = new ReadSettings(OptionalDouble.of(10), List.of(), Map.of("raw", 0.5));
        try (Capture capture = read(settings)) {
            assertThat(CaptureValues.channels(capture)).containsExactly("raw in V");
            assertThat(CaptureValues.valuesOf(capture, 0)[1]).isEqualTo(0.5);
        }
    }

    @Test
    void whatWasLeftOutIsSaidWhereNothingIsLeft() {
        contents.leaveOut("a/table", "a table");
        contents.leaveOut("name", "text");
        assertThatThrownBy(this::read)
                .hasMessage("made.up: holds no array of samples, only a/table (a table); name (text); "
                        + "export the channels as arrays of plain numbers");
    }

    @Test
    void timeThatGoesBackIsRefusedWithTheRow() {
        add("t", 10, 1, i -> i % 6);
        add("signal1", 10, 1, i -> i % 2);
        assertThatThrownBy(this::read).hasMessageContaining("row 6: time goes back from 5.0 s to 0.0 s");
    }
}
