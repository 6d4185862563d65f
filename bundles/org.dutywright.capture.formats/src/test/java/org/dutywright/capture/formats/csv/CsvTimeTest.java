// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.dutywright.capture.formats.csv.CsvText.AT_1_KHZ;
import static org.dutywright.capture.formats.csv.CsvText.channels;
import static org.dutywright.capture.formats.csv.CsvText.read;
import static org.dutywright.capture.formats.csv.CsvText.secondsOf;
import static org.dutywright.capture.formats.csv.CsvText.valuesOf;

import java.nio.file.Path;
import java.util.Locale;
import java.util.function.IntFunction;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Gap;
import org.dutywright.capture.Segment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CsvTimeTest {
    @TempDir
    Path folder;

    private static String table(String header, int rows, IntFunction<String> stamp) {
        StringBuilder text = new StringBuilder(header).append('\n');
        for (int i = 0; i < rows; i++) {
            text.append(stamp.apply(i)).append(',').append(i % 9).append(".5\n");
        }
        return text.toString();
    }

    // the same instants, printed in each way; 100 kHz from -1 ms on
    @ParameterizedTest
    @CsvSource({
        "time (s),%.6f,1e-6",
        "time (ms),%.3f,1e-3",
        "time (us),%.0f,1",
        "Time [ns],%.0f,1e3",
        "t/ks,%.9f,1e-9",
        "time,%.7e,1e-6"
    })
    void timeIsReadInAnyUnitAndSnapsToTheRateThatWasSet(String heading, String format, double factor) throws Exception {
        String text =
                table(heading + ",signal1", 1000, i -> String.format(Locale.ROOT, format, (10.0 * i - 1000) * factor));
        try (Capture capture = read(folder, text)) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(100_000);
            // one rounding of the product with the unit's factor
            assertThat(capture.timeBase().secondsAt(0)).isCloseTo(-1e-3, within(1e-18));
            assertThat(capture.timeBase().segments()).hasSize(1);
            assertThat(channels(capture)).containsExactly("signal1 in V");
        }
    }

    @Test
    void stampsOfSixSignificantDigitsAreEvenAlthoughTheyGrowCoarser() throws Exception {
        // printed as %g does: 0.00002 at first, 11.9999 at last, where five rows share a stamp
        String text = table("time,signal1", 600_000, i -> significant(i * 2e-5));
        try (Capture capture = read(folder, text)) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(50_000);
            assertThat(capture.timeBase().segments()).hasSize(1);
            assertThat(capture.guessed()).containsKey("time stamps");
        }
    }

    private static String significant(double seconds) {
        return seconds == 0
                ? "0"
                : new java.math.BigDecimal(seconds)
                        .round(new java.math.MathContext(6))
                        .toPlainString();
    }

    @Test
    void gapsAreFoundInTheTimeStamps() throws Exception {
        String text =
                table("time,signal1", 600, i -> String.format(Locale.ROOT, "%.4f", (i < 300 ? i : i + 5000) * 1e-3));
        try (Capture capture = read(folder, text)) {
            assertThat(capture.timeBase().segments())
                    .containsExactly(new Segment(0, 300, 0), new Segment(300, 300, 5.3));
            assertThat(capture.timeBase().gaps()).containsExactly(new Gap(0.299, 5.3));
            assertThat(capture.guessed()).containsEntry("gaps", "1, where rows lie more than 1.5 steps apart");
        }
    }

    @Test
    void unevenStampsAreKeptAsPrinted() throws Exception {
        double[] seconds = {-0.5, -0.25, 0.125, 0.126, 0.126, 7.375};
        StringBuilder text = new StringBuilder("time,signal1\n");
        for (double at : seconds) {
            text.append(at).append(",1\n");
        }
        try (Capture capture = read(folder, text.toString())) {
            assertThat(capture.timeBase().sampleRateHz()).isEmpty();
            assertThat(secondsOf(capture)).isEqualTo(seconds);
            // three decimals were printed: 1 ms as a rectangular distribution (JCGM 100, 4.3.7)
            assertThat(capture.timeBase().stampUncertaintySeconds()).isCloseTo(1e-3 / Math.sqrt(12), within(1e-12));
        }
    }

    @Test
    void withoutATimeColumnTheGivenRateCounts() throws Exception {
        try (Capture capture = read(folder, "signal1,signal2\n3,1\n2,1\n5,1\n", AT_1_KHZ)) {
            assertThat(secondsOf(capture)).containsExactly(0, 0.001, 0.002);
            assertThat(capture.guessed()).containsEntry("time column", "none");
        }
    }

    @Test
    void aTimeColumnWinsOverTheGivenRate() throws Exception {
        try (Capture capture = read(folder, "time,signal1\n0.00,3\n0.01,2\n0.02,5\n", AT_1_KHZ)) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(100);
            assertThat(capture.guessed())
                    .containsEntry("given sample rate", "not used, because there is a time column");
        }
    }

    @Test
    void rowsWithMissingCellsAreLeftOutAsGaps() throws Exception {
        String text = """
                time,signal1,signal2
                0.000,1,10
                0.001,,10
                0.002,3,NaN
                0.003,4,10
                0.004,5
                0.005,6,10
                0.006,n/a,10
                0.007,8,-
                0.008,9,inf
                0.009,10,10
                0.010,11,10
                """;
        try (Capture capture = read(folder, text)) {
            assertThat(valuesOf(capture, 0)).containsExactly(1, 4, 6, 10, 11);
            assertThat(capture.timeBase().segments())
                    .extracting(Segment::firstSample)
                    .containsExactly(0L, 1L, 2L, 3L);
            assertThat(capture.guessed())
                    .containsEntry("rows left out", "6, because values are missing; the first is line 3");
        }
        String withoutTime = text.replaceAll("(?m)^[^,\n]*,", "");
        try (Capture capture = read(folder, withoutTime, AT_1_KHZ)) {
            // a sum of two rounded numbers: some units in the last place
            assertThat(secondsOf(capture)).containsExactly(new double[] {0, 0.003, 0.005, 0.009, 0.010}, within(1e-16));
            assertThat(capture.timeBase().segments()).hasSize(4);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.003", "'0.003,'", "'0.003,1e-'", "'0.003,-'", "'0.003,1.5,2.'"})
    void aLastLineThatIsCutOffIsLeftOut(String last) throws Exception {
        String text = "time,signal1,signal2\n0.000,1.5,2.25\n0.001,1.5,2.25\n0.002,1.5,2.25\n" + last;
        try (Capture capture = read(folder, text)) {
            boolean whole = last.endsWith("2.");
            assertThat(capture.sampleCount()).isEqualTo(whole ? 4 : 3);
            if (!whole) {
                assertThat(capture.guessed()).containsEntry("last line", "line 5, cut off, left out");
            }
        }
    }

    @Test
    void aLastNumberThatIsCutOffIsLeftOutWhereOthersShowIt() throws Exception {
        String rows = table("time,signal1", 200, i -> String.format(Locale.ROOT, "%.3f", i * 1e-3));
        try (Capture capture = read(folder, rows + "0.200,1")) {
            assertThat(capture.sampleCount()).isEqualTo(200);
            assertThat(capture.guessed()).containsEntry("last line", "line 202, cut off, left out");
        }
        try (Capture capture = read(folder, rows + "0.200,1.5")) {
            assertThat(capture.sampleCount()).isEqualTo(201);
        }
    }

    @Test
    void aLastLineThatIsCutOffInsideQuotesIsLeftOut() throws Exception {
        try (Capture capture = read(folder, "time,signal1\n\"0.0\",\"1.5\"\n\"0.1\",\"1.5\"\n\"0.2\",\"1e")) {
            assertThat(capture.sampleCount()).isEqualTo(2);
            assertThat(capture.guessed()).containsEntry("last line", "line 4, cut off, left out");
        }
    }
}
