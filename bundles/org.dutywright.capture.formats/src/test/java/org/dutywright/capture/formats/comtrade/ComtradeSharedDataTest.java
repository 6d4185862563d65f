// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.dutywright.capture.formats.SharedData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Against the open records of ../shared/data/comtrade. Expected are a x + b of the numbers in the files, those of binary
 * files as Python 3's struct module unpacks them by the layout of the standard.
 */
class ComtradeSharedDataTest {
    private static final double A = 0.1138916015625;
    private static final double B = 0.05694580078125;

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({
        "sample_ascii.cfg, sample_ascii.dat, false",
        "sample_ascii_utf-8.cfg, sample_ascii.dat, true",
        "sample_iso8859-1.cfg, sample_iso8859-1.dat, false",
        "sample_sub_char.cfg, sample_ascii.dat, true"
    })
    void textRecordsOfRevision2013(String config, String data, boolean byData) throws Exception {
        try (Capture capture = open(config, data, byData)) {
            checkAscii(capture, 40);
        }
    }

    @Test
    void aTextRecordInOneFile() throws Exception {
        try (Capture capture = open(file("sample_ascii.cff"))) {
            checkAscii(capture, 40);
        }
    }

    private static void checkAscii(Capture capture, int rows) throws IOException {
        assertThat(CaptureValues.channels(capture))
                .containsExactly("IA in A", "IB in A", "IC in A", "3I0 in A", "51A", "51B", "51C", "51N");
        assertThat(capture.timeBase().sampleRateHz()).hasValue(1200);
        assertThat(capture.sampleCount()).isEqualTo(rows);
        assertThat(CaptureValues.valuesOf(capture, 0)).startsWith(A * -83 + B, A * -15 + B, A * 55 + B);
        assertThat(CaptureValues.valuesOf(capture, 3)).startsWith(A * -8 + B).endsWith(A * -110 + B);
        assertThat(CaptureValues.valuesOf(capture, 4)).startsWith(0, 0, 0).endsWith(1, 1, 1);
        assertThat(CaptureValues.valuesOf(capture, 6)).containsOnly(0);
    }

    @Test
    void missingValuesInTextLeaveGaps() throws Exception {
        try (Capture capture = open("sample_ascii.cfg", "sample_ascii_missing.dat", false)) {
            // lines 2 to 5 each miss another value
            assertThat(capture.guessed().get("records left out"))
                    .startsWith("4, ")
                    .endsWith("line 2");
            assertThat(capture.sampleCount()).isEqualTo(36);
            assertThat(capture.timeBase().gaps()).hasSize(1);
            assertThat(CaptureValues.secondsOf(capture)).startsWith(0, 5 / 1200.0);
        }
    }

    @Test
    void aBinaryRecordOfRevision1999() throws Exception {
        try (Capture capture = open(file("sample_bin.cfg"))) {
            assertThat(capture.channels()).hasSize(20);
            assertThat(CaptureValues.channels(capture))
                    .startsWith("VA in V", "VB in V")
                    .endsWith("ST_16");
            assertThat(capture.timeBase().sampleRateHz()).hasValue(15_360);
            assertThat(CaptureValues.valuesOf(capture, 0))
                    .usingComparatorWithPrecision(1e-8)
                    .containsExactly(-9038.626171, -8890.991779, -8703.553997, -8476.312825, -8246.53871);
            assertThat(CaptureValues.valuesOf(capture, 3))
                    .usingComparatorWithPrecision(1e-8)
                    .containsExactly(203.078309, 196.76149, 191.005433, 187.871763, 182.610496);
        }
    }

    @Test
    void missingValuesInBytesLeaveOutTheirRecordUnlessTheirChannelIsNotPicked() throws Exception {
        copy("sample_bin.cfg", "pedal.cfg");
        Path data = copy("sample_bin_missing.dat", "pedal.dat");
        // each of the first four records misses another of the four analog channels
        try (Capture capture = Captures.open(List.of(data), CaptureValues.pick("VA"), Progress.NONE)) {
            assertThat(capture.sampleCount()).isEqualTo(4);
        }
        try (Capture capture = Captures.open(List.of(data), CaptureValues.pick("VA", "VB", "VC"), Progress.NONE)) {
            assertThat(capture.sampleCount()).isEqualTo(2);
        }
    }

    @Test
    void aBinaryRecordWithNamesInTheOlderEncoding() throws Exception {
        try (Capture capture = open(file("sample_iso8859-1_bin.cfg"))) {
            assertThat(capture.sampleCount()).isEqualTo(40);
            assertThat(CaptureValues.valuesOf(capture, 0))
                    .startsWith(0.000832454560204436 * -15665 + 3.64453125)
                    .endsWith(0.000832454560204436 * -27431 + 3.64453125);
            // the last status word is 11, binary 1011
            double[] last = new double[4];
            for (int i = 0; i < 4; i++) {
                last[i] = CaptureValues.valuesOf(capture, 4 + i)[39];
            }
            assertThat(last).containsExactly(1, 1, 0, 1);
        }
    }

    @Test
    void aFloatRecordInOneFile() throws Exception {
        try (Capture capture = open(file("sample_float32.cff"))) {
            assertThat(CaptureValues.channels(capture)).containsExactly("test/out1", "test/bool1");
            assertThat(capture.sampleCount()).isEqualTo(301);
            assertThat(CaptureValues.valuesOf(capture, 0))
                    .startsWith(2.8096930980682373, 2.8096930980682373)
                    .endsWith(44.93144607543945);
            assertThat(capture.timeBase().sampleRateHz()).hasValue(100);
        }
    }

    /** Known of it: 2,048 samples at 30,707.244140625 Hz, empty time stamps, a lone end sign in the last line. */
    @Test
    void aRealRecordOfRevision1999() throws Exception {
        try (Capture capture = open(file("keating_1999.CFG"))) {
            assertThat(CaptureValues.channels(capture))
                    .containsExactly(
                            "I1 in A", "I2 in A", "I3 in A", "I4 in A", "U1 in V", "U2 in V", "U3 in V", "U4 in V");
            assertThat(capture.sampleCount()).isEqualTo(2048);
            assertThat(capture.timeBase().sampleRateHz()).hasValue(30_707.244140625);
            assertThat(CaptureValues.valuesOf(capture, 0))
                    .startsWith(-0.0197614394128323 * 1571 + 25.3736882060767)
                    .endsWith(-0.0197614394128323 * 1632 + 25.3736882060767);
            assertThat(CaptureValues.valuesOf(capture, 7))
                    .startsWith(-0.0380415394902229 * 14 + 0.494540013372898)
                    .endsWith(-0.0380415394902229 * 15 + 0.494540013372898);
        }
    }

    private static Path file(String name) {
        Optional<Path> data = SharedData.folder("comtrade");
        assumeTrue(data.isPresent(), "../shared/data/comtrade is absent: " + name + " is not checked");
        return data.get().resolve(name);
    }

    private Path copy(String name, String as) throws IOException {
        return Files.write(folder.resolve(as), Files.readAllBytes(file(name)));
    }

    private Capture open(String config, String data, boolean byData) throws UnreadableException, IOException {
        Path first = copy(config, "pedal.cfg");
        Path second = copy(data, "pedal.dat");
        return open(byData ? second : first);
    }

    private static Capture open(Path file) throws UnreadableException, IOException {
        return Captures.open(List.of(file), ReadSettings.none(), Progress.NONE);
    }
}
