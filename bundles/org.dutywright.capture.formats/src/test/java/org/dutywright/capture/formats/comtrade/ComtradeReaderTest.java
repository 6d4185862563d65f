// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Segment;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Records written by hand; a number x stands for 2 x + 1 mV. */
class ComtradeReaderTest {
    private static final String RATE = "1\n1000,3";
    private static final String ROWS = "1,0,0,0\n2,1000,1,1\n3,2000,-3,0\n";

    @TempDir
    Path folder;

    @Test
    void textIsReadInTheUnitOfItsChannelWithTimeByTheRate() throws Exception {
        try (Capture capture = read(ComtradeText.config("ASCII", RATE), ROWS)) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal1 in V", "key");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0.001, 0.003, -0.005);
            assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(0, 1, 0);
            assertThat(capture.timeBase().sampleRateHz()).hasValue(1000);
            assertThat(capture.guessed())
                    .containsEntry("record", "IEEE C37.111-1999, ASCII")
                    .containsEntry("secondary values", "signal1")
                    .containsEntry("trigger", "0.25 s after the first sample");
            assertThat(capture.sources())
                    .extracting(source -> source.path().getFileName().toString())
                    .containsExactly("pedal.cfg", "pedal.dat");
        }
    }

    @Test
    void theThreeBinaryKindsAreRead() throws Exception {
        for (String kind : List.of("BINARY", "BINARY32", "float32")) {
            byte[] data = kind.equals("float32")
                    ? ComtradeText.floats(0, 1, -3)
                    : ComtradeText.binary(kind.equals("BINARY") ? 2 : 4, 0, 1, -3);
            try (Capture capture = read(ComtradeText.config(kind, RATE), data)) {
                assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0.001, 0.003, -0.005);
                assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(0, 1, 0);
                assertThat(capture.samples().counts(0).isPresent()).isEqualTo(kind.equals("BINARY"));
            }
        }
    }

    @Test
    void missingValuesLeaveGaps() throws Exception {
        try (Capture capture =
                read(ComtradeText.config("ASCII", "1\n1000,5"), "1,,0,0\n2,,99999,1\n3,,1,1\n4,,,1\n5,,2,0\n")) {
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0.001, 0.003, 0.005);
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 0.002, 0.004);
            assertThat(capture.timeBase().segments()).hasSize(3);
            assertThat(capture.guessed())
                    .containsEntry("records left out", "2, because values are missing; the first is line 2");
        }
        try (Capture capture = read(ComtradeText.config("BINARY", "1\n1000,3"), ComtradeText.binary(2, 0, -32768, 1))) {
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 0.002);
        }
        try (Capture capture =
                read(ComtradeText.config("BINARY32", "1\n1000,3"), ComtradeText.binary(4, 0, Integer.MIN_VALUE, 1))) {
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 0.002);
        }
        try (Capture capture =
                read(ComtradeText.config("FLOAT32", "1\n1000,3"), ComtradeText.floats(0, Double.NaN, 1))) {
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 0.002);
        }
    }

    @Test
    void beforeRevision1999TheNumber99999IsAValue() throws Exception {
        String config = ComtradeText.config("ASCII", RATE).replace(",1999", "");
        try (Capture capture = read(config, "1,,0,0\n2,,99999,1\n3,,1,1\n")) {
            assertThat(CaptureValues.valuesOf(capture, 0)[1]).isEqualTo(199.999, within(1e-12));
            assertThat(capture.guessed().get("record")).contains("-1991");
        }
    }

    @Test
    void sampleNumbersThatAreSkippedLeaveAGap() throws Exception {
        try (Capture capture = read(ComtradeText.config("ASCII", RATE), "1,,0,0\n2,,0,0\n6,,1,1\n")) {
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 0.001, 0.005);
            assertThat(capture.guessed()).containsEntry("sample numbers skipped", "3");
        }
        refused(ComtradeText.config("ASCII", RATE), "1,,0,0\n9000000000,,0,0\n", "line 2: sample number 9000000000");
        refused(ComtradeText.config("ASCII", RATE), "5,,0,0\n4,,0,0\n", "line 2: sample number 4 follows 5");
    }

    @Test
    void severalRatesGiveEachSampleAnInstantAndNoGap() throws Exception {
        String config = ComtradeText.config("ASCII", "2\n1000,3\n10,5");
        try (Capture capture = read(config, "1,,0,0\n2,,1,1\n3,,2,0\n4,,3,0\n5,,4,0\n")) {
            assertThat(CaptureValues.secondsOf(capture))
                    .usingComparatorWithPrecision(1e-15)
                    .containsExactly(0, 0.001, 0.002, 0.102, 0.202);
            assertThat(capture.timeBase().sampleRateHz()).isEmpty();
            assertThat(capture.timeBase().segments()).containsExactly(new Segment(0, 5, 0));
        }
    }

    @Test
    void withoutARateTheTimeStampsCount() throws Exception {
        String none = "0\n0,3";
        try (Capture capture = read(ComtradeText.config("ASCII", none, "1999", "0.5"), ROWS)) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(2000);
        }
        String nanoseconds = ComtradeText.config("ASCII", none, "2013", "1").replace("00.000000", "00.000000000");
        try (Capture capture = read(nanoseconds, ROWS)) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(1e6);
        }
        try (Capture capture = read(ComtradeText.config("ASCII", none), "1,0,0,0\n2,7,1,1\n3,1000,2,0\n")) {
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 7e-6, 1e-3);
        }
        refused(ComtradeText.config("ASCII", none), "1,0,0,0\n2,,1,1\n", "line 2: there is neither a time stamp nor");
        refused(ComtradeText.config("ASCII", none), "1,9,0,0\n2,3,1,1\n", "line 2: time goes back");
    }

    @Test
    void allPartsMayLieInOneFile() throws Exception {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.writeBytes(ascii("--- file type: CFG ---\r\n" + ComtradeText.config("BINARY", RATE)));
        file.writeBytes(ascii("--- file type: INF ---\r\n\r\n--- file type: DAT BINARY: 36 ---\r\n"));
        file.writeBytes(ComtradeText.binary(2, 0, 1, -3));
        Path path = Files.write(folder.resolve("all.bin"), file.toByteArray());
        try (Capture capture = Captures.open(List.of(path), ReadSettings.none(), Progress.NONE)) {
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0.001, 0.003, -0.005);
            assertThat(capture.sources()).hasSize(1);
        }
        String text = "--- file type: CFG ---\n" + ComtradeText.config("ASCII", "1\n1000,9")
                + "--- file type: DAT ASCII ---\n" + ROWS + "--- file type: HDR ---\nsaid later\n";
        Files.writeString(path, text);
        try (Capture capture = Captures.open(List.of(path), ReadSettings.none(), Progress.NONE)) {
            assertThat(capture.sampleCount()).isEqualTo(3);
            assertThat(capture.guessed()).containsEntry("length", "declared as 9 samples, cut off after 3");
        }
    }

    @Test
    void eitherFileOfAPairMayBeNamedWhateverTheCaseOfItsEnding() throws Exception {
        Path config = Files.writeString(folder.resolve("A.CFG"), ComtradeText.config("ASCII", RATE));
        Path data = Files.writeString(folder.resolve("A.DAT"), ROWS);
        for (Path named : List.of(config, data)) {
            try (Capture capture = Captures.open(List.of(named), ReadSettings.none(), Progress.NONE)) {
                assertThat(capture.sampleCount()).isEqualTo(3);
                assertThat(capture.sources().get(0).path()).isEqualTo(named);
                assertThat(capture.sources()).hasSize(2);
            }
        }
        Files.delete(config);
        try (Capture table = Captures.open(List.of(data), CaptureValues.at(1000), Progress.NONE)) {
            assertThat(table.guessed()).as("read as a table").containsKey("delimiter");
        }
        Files.writeString(config, ComtradeText.config("ASCII", RATE));
        Files.delete(data);
        assertThatThrownBy(() -> Captures.open(List.of(config), ReadSettings.none(), Progress.NONE))
                .hasMessageContaining("put the .dat file of the same name beside it");
    }

    @Test
    void namesMayBeInTheOlderEncodingAndEndSignsMayFollow() throws Exception {
        byte[] config = ComtradeText.config("ASCII", RATE)
                .replace("signal1", "p\u00e9dale")
                .concat("\u001A\u001A")
                .getBytes(StandardCharsets.ISO_8859_1);
        try (Capture capture = read(config, ascii(ROWS + "\u001A"))) {
            assertThat(capture.channels().get(0).name()).isEqualTo("p\u00e9dale");
            assertThat(capture.sampleCount()).isEqualTo(3);
        }
    }

    @Test
    void aLastRecordThatIsCutOffIsLeftOut() throws Exception {
        try (Capture capture = read(ComtradeText.config("ASCII", RATE), "1,,0,0\n2,,1,0\n3,,2")) {
            assertThat(capture.sampleCount()).isEqualTo(2);
            assertThat(capture.guessed()).containsEntry("length", "declared as 3 samples, cut off after 2");
        }
        byte[] data = ComtradeText.binary(2, 0, 1, -3);
        try (Capture capture = read(ComtradeText.config("BINARY", RATE), java.util.Arrays.copyOf(data, 35))) {
            assertThat(capture.sampleCount()).isEqualTo(2);
        }
    }

    @Test
    void channelsArePickedAndScaledByName() throws Exception {
        write(ascii(ComtradeText.config("ASCII", RATE)), ascii(ROWS));
        try (Capture capture = new ComtradeCaptureReader()
                .read(folder.resolve("pedal.cfg"), CaptureValues.pick("key"), Progress.NONE)) {
            assertThat(CaptureValues.channels(capture)).containsExactly("key");
        }
        try (Capture capture = new ComtradeCaptureReader()
                .read(folder.resolve("pedal.cfg"), CaptureValues.scale("signal1", 10), Progress.NONE)) {
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0.01, 0.03, -0.05);
        }
    }

    @Test
    void brokenRecordsAreRefusedWithTheLine() {
        String good = ComtradeText.config("ASCII", RATE);
        refused(good.replace("mV,2,1", "mV,two,1"), ROWS, "pedal.cfg, line 3: the line says 'two'");
        refused(
                good.replace("1,signal1,,, mV,2,1,0,-32767,32767,1,1,S", "1,2,3"),
                ROWS,
                "line 3: the line has 3 fields");
        refused(good.replace("2,1A,1D", "0,0A,0D"), ROWS, "line 2: the line declares 0 channels");
        refused(good.replace("2,1A,1D", "2,999999999A,999999999D"), ROWS, "declares 1999999998 channels");
        refused(good.replace("\n1\n1000", "\n99999\n1000"), ROWS, "line 6: the line declares 99999 sample rates");
        refused(good.replace("1000,3", "1000,-3"), ROWS, "line 7: the line says '-3'");
        refused(good.replace("ASCII", "BASE64"), ROWS, "line 10: the line says 'BASE64'");
        refused(good.substring(0, 60), ROWS, "the configuration ends too early");
        refused(good, "1,,0,0\n2,,x,0\n", "pedal.dat, line 2: the line holds 'x', which is no number, in field 3");
        refused(good, "1,,0,0\n2,,0\n3,,0,0\n", "pedal.dat, line 2: the line has 3 fields instead of 4");
        refused(good, "1,,0,0\n2,,0,0,7\n", "pedal.dat, line 2: the line has more than 4 fields");
        refused(good, "", "holds no complete row");
    }

    private void refused(String config, String data, String said) {
        assertThatThrownBy(() -> read(config, data))
                .isInstanceOf(UnreadableException.class)
                .hasMessageStartingWith(folder.toString())
                .hasMessageContaining(said);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    private Capture read(String config, String data) throws UnreadableException, IOException {
        return read(ascii(config), ascii(data));
    }

    private Capture read(String config, byte[] data) throws UnreadableException, IOException {
        return read(ascii(config), data);
    }

    private Capture read(byte[] config, byte[] data) throws UnreadableException, IOException {
        return new ComtradeCaptureReader().read(write(config, data), ReadSettings.none(), Progress.NONE);
    }

    private Path write(byte[] config, byte[] data) throws IOException {
        Files.write(folder.resolve("pedal.dat"), data);
        return Files.write(folder.resolve("pedal.cfg"), config);
    }
}
