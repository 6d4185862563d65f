// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.dutywright.capture.formats.csv.CsvText.channels;
import static org.dutywright.capture.formats.csv.CsvText.read;
import static org.dutywright.capture.formats.csv.CsvText.secondsOf;
import static org.dutywright.capture.formats.csv.CsvText.valuesOf;

import java.nio.file.Path;
import java.util.Locale;
import org.dutywright.capture.Capture;
import org.dutywright.capture.UnreadableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Clock times as time stamps, and time that starts anew; instants are sums of what is written. */
class CsvClockTest {
    @TempDir
    Path folder;

    // 1 kHz around a full second; %1$02d is the second, %2$03d the millisecond
    @ParameterizedTest
    @CsvSource({
        "12:00:%1$02d.%2$03d, 43200",
        "'12:00:%1$02d,%2$03d', 43200",
        "1:00:%1$02d.%2$03d PM, 46800",
        "12:00:%1$02d.%2$03d am, 0",
        "2026-11-25 12:00:%1$02d.%2$03d, 43200",
        "2026-11-25T12:00:%1$02d.%2$03dZ, 43200",
        "2026-11-25T12:00:%1$02d.%2$03d+01:00, 43200",
        "25.11.2026 12:00:%1$02d.%2$03d, 43200",
        "11/12/2026 12:00:%1$02d.%2$03d, 43200"
    })
    void clockTimesAreSecondsSinceMidnight(String format, double midnight) throws Exception {
        StringBuilder text = new StringBuilder("when;signal1 (mV)\n");
        for (int i = 0; i < 2000; i++) {
            text.append(String.format(Locale.ROOT, format, 9 + i / 1000, i % 1000))
                    .append(";")
                    .append(i)
                    .append('\n');
        }
        try (Capture capture = read(folder, text.toString())) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(1000);
            // doubles near 43209 lie 7e-12 apart
            assertThat(capture.timeBase().secondsAt(0)).isCloseTo(midnight + 9, within(1e-11));
            assertThat(capture.timeBase().secondsAt(1999)).isCloseTo(midnight + 10.999, within(1e-11));
            assertThat(channels(capture)).containsExactly("signal1 in V");
            assertThat(valuesOf(capture, 0)[1000]).isEqualTo(1);
            assertThat(capture.guessed())
                    .containsEntry("time unit", "clock, taken as seconds since midnight of the first day");
        }
    }

    @Test
    void aColumnOfDatesBesideTheClockIsLeftOut() throws Exception {
        String text = "Date,Time,signal1\n2026-11-25,12:00:00.1,1\n2026-11-25,12:00:00.2,2\n2026-11-25,12:00:00.3,4\n";
        try (Capture capture = read(folder, text)) {
            assertThat(channels(capture)).containsExactly("signal1 in V");
            assertThat(capture.timeBase().sampleRateHz()).hasValue(10);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "23:59:59.0,23:59:59.5,00:00:00.0",
        "2026-11-30 23:59:59.0,2026-11-30 23:59:59.5,2026-12-01 00:00:00.0",
        "30.11.2026 23:59:59.0,30.11.2026 23:59:59.5,01.12.2026 00:00:00.0",
        "02/03/2026 23:59:59.0,02/03/2026 23:59:59.5,03/03/2026 00:00:00.0"
    })
    void midnightIsPassed(String first, String second, String third) throws Exception {
        try (Capture capture = read(folder, "t,signal1\n" + first + ",1\n" + second + ",2\n" + third + ",3\n")) {
            assertThat(secondsOf(capture)).containsExactly(86_399, 86_399.5, 86_400);
        }
    }

    @Test
    void aCellThatIsNoClockTimeIsNamed() {
        assertThatThrownBy(() -> read(folder, "t,a\n12:00:00,1\n12:00:01,2\n12:0x:02,3\n12:00:03,4\n"))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("line 4, column 1: '12:0x:02' is no clock time");
        assertThatThrownBy(() -> read(folder, "t,a\n12:00:00,1\n12:00:01,2\n11:00:02,3\n12:00:03,4\n"))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("line 4, column 1: time goes back");
        assertThatThrownBy(() -> read(folder, "t,a\n12:00:00,1\n12:00:01,2\n12:61:02,3\n12:62:03,4\n"))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("'12:61:02' is no clock time");
    }

    @Test
    void partsWhoseTimeStartsAnewFollowOneAnotherWithGaps() throws Exception {
        StringBuilder text = new StringBuilder("t (ms),signal1\n");
        for (int i = 0; i < 300; i++) {
            int part = i / 100;
            // each part starts a little off, as a trigger between two samples makes it
            text.append(String.format(Locale.ROOT, "%.3f,%d%n", -5 + i % 100 * 0.1 + part * 0.03, i));
        }
        try (Capture capture = read(folder, text.toString())) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(10_000);
            assertThat(capture.timeBase().gaps()).hasSize(2);
            assertThat(capture.timeBase().segments()).hasSize(3);
            assertThat(capture.timeBase().secondsAt(0)).isEqualTo(-0.005);
            // behind the last stamp of the part before by three steps
            assertThat(capture.timeBase().secondsAt(100)).isCloseTo(0.0049 + 3e-4, within(1e-6));
            assertThat(valuesOf(capture, 0)).hasSize(300).startsWith(0, 1, 2).endsWith(299);
            assertThat(capture.guessed().get("time starts anew")).startsWith("2 times, first in line 102;");
        }
    }
}
