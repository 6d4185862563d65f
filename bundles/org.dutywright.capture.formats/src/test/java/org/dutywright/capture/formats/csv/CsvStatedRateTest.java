// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.dutywright.capture.formats.csv.CsvText.AT_1_KHZ;
import static org.dutywright.capture.formats.csv.CsvText.read;

import java.nio.file.Path;
import java.util.Locale;
import org.dutywright.capture.Capture;
import org.dutywright.capture.StatedRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A sample rate that a file states in words before its table. */
class CsvStatedRateTest {
    @TempDir
    Path folder;

    private static String table(String preamble, String header, boolean stamped) {
        StringBuilder text =
                new StringBuilder(preamble).append('\n').append(header).append('\n');
        for (int i = 0; i < 500; i++) {
            if (stamped) {
                text.append(String.format(Locale.ROOT, "%.5f,", i * 1e-5));
            }
            text.append(i % 9).append(".5,").append(i % 7).append(".5\n");
        }
        return text.toString();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Sample rate: 50 kHz | 50e3",
                "Sampling Rate,50000 | 50e3",
                "\"Sample Rate\",\"50 kS/s\" | 50e3",
                "# sampling frequency = 5e4 Hz | 50e3",
                "Sample rate (kHz),50 | 50e3",
                "Samples per second: 50000 | 50e3",
                "Abtastrate;0.05 MHz | 50e3",
                "Sample interval,2E-05,s | 50e3",
                "Sample Interval [us],20 | 50e3",
                "Time step: 20 µs | 50e3",
                "sampling period 0.02 ms | 50e3",
                "Sample rate 50000 Record length 20000 | 50e3"
            })
    void isFoundWhateverTheWordingAndUnit(String preamble, double hertz) throws Exception {
        try (Capture capture = read(folder, table(preamble, "time (s),signal1,signal2", true))) {
            assertThat(capture.statedRates()).hasSize(1);
            StatedRate stated = capture.statedRates().get(0);
            // one rounding of the product with the unit's factor, one of the inverse
            assertThat(stated.sampleRateHz()).isCloseTo(hertz, within(1e-9));
            assertThat(stated.origin()).isEqualTo("line 1");
            // the time column says 100 kHz and stays
            assertThat(capture.timeBase().sampleRateHz()).hasValue(100e3);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"Record length: 50000", "Sample rate:", "Sample rate: fast", "Sample count,500", "rated 50 Hz"})
    void isNotMadeUp(String preamble) throws Exception {
        try (Capture capture = read(folder, table(preamble, "time (s),signal1,signal2", true))) {
            assertThat(capture.statedRates()).isEmpty();
        }
    }

    @Test
    void isUsedWhereNothingElseSaysIt() throws Exception {
        try (Capture capture = read(folder, table("Sample rate: 50 kHz", "signal1,signal2", false))) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(50e3);
            assertThat(capture.statedRates()).isEmpty();
            assertThat(capture.guessed()).containsEntry("sample rate taken from", "line 1");
        }
    }

    @Test
    void givesWayToTheUserAndIsComparedWithWhatHeSays() throws Exception {
        try (Capture capture = read(folder, table("Sample rate: 50 kHz", "signal1,signal2", false), AT_1_KHZ)) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(1e3);
            assertThat(capture.statedRates())
                    .extracting(StatedRate::sampleRateHz)
                    .containsExactly(50e3);
        }
    }

    @Test
    void ofTheUserIsComparedWithTheTimeColumn() throws Exception {
        try (Capture capture = read(folder, table("yard", "time (s),signal1,signal2", true), AT_1_KHZ)) {
            assertThat(capture.statedRates()).extracting(StatedRate::origin).containsExactly("--sample-rate");
        }
    }

    @Test
    void numbersThatStandForNoneAreLeftOut() throws Exception {
        // SCPI-1999, volume 1, 7.2.1: 9.9E37 is infinity, 9.91E37 no number
        String text = table("yard", "time (s),signal1,signal2", true) + "0.00500,9.9E37,1.5\n0.00501,1.5,9.91E+37\n"
                + "0.00502,1.5,-9.9e37\n0.00503,1.5,1.5\n";
        try (Capture capture = read(folder, text)) {
            assertThat(capture.sampleCount()).isEqualTo(501);
            assertThat(capture.guessed().get("rows left out")).startsWith("3, ");
        }
    }
}
