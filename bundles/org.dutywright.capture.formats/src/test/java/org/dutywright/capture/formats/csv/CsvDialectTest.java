// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.dutywright.capture.formats.csv.CsvText.AT_1_KHZ;
import static org.dutywright.capture.formats.csv.CsvText.channels;
import static org.dutywright.capture.formats.csv.CsvText.file;
import static org.dutywright.capture.formats.csv.CsvText.read;
import static org.dutywright.capture.formats.csv.CsvText.valuesOf;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The same three rows of two channels, written in many ways. */
class CsvDialectTest {
    @TempDir
    Path folder;

    private static void isTheRecording(Capture capture) throws Exception {
        assertThat(channels(capture)).containsExactly("signal1 in V", "signal2 in V");
        assertThat(capture.timeBase().sampleRateHz()).hasValue(1000);
        assertThat(capture.timeBase().secondsAt(0)).isEqualTo(-0.001);
        assertThat(valuesOf(capture, 0)).containsExactly(0.25, 12.5, -3e-3);
        assertThat(valuesOf(capture, 1)).containsExactly(1, 2, 3);
    }

    static Stream<Arguments> writings() {
        return Stream.of(
                Arguments.of("plain", "time,signal1,signal2\n-0.001,0.25,1\n0.000,12.5,2\n0.001,-3e-3,3\n"),
                Arguments.of("no last line end", "time,signal1,signal2\n-0.001,0.25,1\n0.000,12.5,2\n0.001,-3e-3,3"),
                Arguments.of("CR LF", "time,signal1,signal2\r\n-0.001,0.25,1\r\n0.000,12.5,2\r\n0.001,-3e-3,3\r\n"),
                Arguments.of("CR", "time,signal1,signal2\r-0.001,0.25,1\r0.000,12.5,2\r0.001,-3e-3,3\r"),
                Arguments.of("mark", "\uFEFFtime,signal1,signal2\n-0.001,0.25,1\n0.000,12.5,2\n0.001,-3e-3,3\n"),
                Arguments.of("padded", "time , signal1, signal2\n-0.001, 0.25, 1\n 0.000, 12.5, 2\n 0.001,-3e-3, 3\n"),
                Arguments.of("semicolon", "time;signal1;signal2\n-0.001;0.25;1\n0.000;12.5;2\n0.001;-3e-3;3\n"),
                Arguments.of("decimal comma", "time;signal1;signal2\n-0,001;0,25;1\n0,000;12,5;2\n0,001;-3e-3;3\n"),
                Arguments.of("tab", "time\tsignal1\tsignal2\n-0.001\t0.25\t1\n0.000\t12.5\t2\n0.001\t-3e-3\t3\n"),
                Arguments.of("tab, comma", "time\tsignal1\tsignal2\n-0,001\t0,25\t1\n0\t12,5\t2\n0,001\t-3e-3\t3\n"),
                Arguments.of("bar", "time|signal1|signal2\n-0.001|0.25|1\n0.000|12.5|2\n0.001|-3e-3|3\n"),
                Arguments.of("spaces", "  time  signal1 signal2\n-0.001  0.25  1\n 0.000 12.5   2\n 0.001 -3e-3 3\n"),
                Arguments.of("spaces, comma", "time signal1 signal2\n-0,001 0,25 1\n0,0 12,5 2\n0,001 -3e-3 3\n"),
                Arguments.of(
                        "headings of two words",
                        "time (s)  signal1 (V) signal2\n-0.001 0.25 1\n0 12.5 2\n.001 -3E-3 3\n"),
                Arguments.of("last comma", "time,signal1,signal2,\n-0.001,0.25,1,\n0.000,12.5,2,\n0.001,-3e-3,3,\n"),
                Arguments.of(
                        "last comma in rows only", "time,signal1,signal2\n-0.001,0.25,1,\n0,12.5,2,\n0.001,-3e-3,3,\n"),
                Arguments.of("brackets", "Time [s],signal1 [V],signal2 (V)\n-0.001,0.25,1\n0,12.5,2\n0.001,-3e-3,3\n"),
                Arguments.of("slashes", "time/ms,signal1/mV,signal2/V\n-1,250,1\n0,12500,2\n1,-3,3\n"),
                Arguments.of("unit line", "time,signal1,signal2\ns,V,V\n-0.001,0.25,1\n0.000,12.5,2\n0.001,-3e-3,3\n"),
                Arguments.of("units in brackets", "time;signal1;signal2\n(ms);(mV);(V)\n-1;250;1\n0;12500;2\n1;-3;3\n"),
                Arguments.of(
                        "units in words",
                        "time,signal1,signal2\nmicroseconds,millivolts,Volt\n-1e3,250,1\n0,12500,2\n1E+3,-3,3\n"),
                Arguments.of("unit in the name", "time_ms,signal1,signal2\n-1,.25,1\n0,12.5,2\n1,-.003,3\n"),
                Arguments.of("unit alone", "Seconds,signal1,signal2\n-0.001,+0.25,1\n0.000,12.5,2\n0.001,-3e-3,3\n"),
                Arguments.of(
                        "comment as headings",
                        "# made by hand\n# time,signal1,signal2\n-0.001,0.25,1\n0,12.5,2\n0.001,-3e-3,3\n"),
                Arguments.of(
                        "comments between",
                        "time,signal1,signal2\n# one\n-0.001,0.25,1\n# two, three\n0,12.5,2\n0.001,-3e-3,3\n"),
                Arguments.of(
                        "blank lines", "\n\ntime,signal1,signal2\n\n-0.001,0.25,1\n \n0.000,12.5,2\n0.001,-3e-3,3\n\n"),
                Arguments.of(
                        "preamble",
                        "Yard: Harrow & Tern\nSamples: 3\n\nRate,1000\ntime,signal1,signal2\n-0.001,0.25,1\n0,12.5,2\n0.001,-3e-3,3\n"),
                Arguments.of(
                        "stray quote",
                        "Bore 5\" pipe\n\"open\ntime,signal1,signal2\n-0.001,0.25,1\n0,12.5,2\n0.001,-3e-3,3\n0.002,-,3\n"),
                Arguments.of(
                        "quoted",
                        "\"time\",\"signal1\",\"signal2\"\n\"-0.001\",\"0.25\",\"1\"\n\"0\",\"12.5\",\"2\"\n\"0.001\",\"-3e-3\",\"3\"\n"),
                Arguments.of(
                        "quotes and comments",
                        "time,signal1,signal2\n\"-0.001\",0.25,1\n# two, \"three\"\n0,12.5,2\n0.001,-3e-3,3\n"),
                Arguments.of(
                        "quoted comma numbers",
                        "time,signal1,signal2\n\"-0.001\",\"0.25\",1\n0,12.5,2\n0.001,-3e-3,3\n"),
                Arguments.of("time last", "signal1,signal2,time\n0.25,1,-0.001\n12.5,2,0\n-3e-3,3,0.001\n"),
                Arguments.of(
                        "index first", "sample,time,signal1,signal2\n1,-0.001,0.25,1\n2,0,12.5,2\n3,0.001,-3e-3,3\n"),
                Arguments.of(
                        "text column", "time,signal1,note,signal2\n-0.001,0.25,on,1\n0,12.5,,2\n0.001,-3e-3,off,3\n"),
                Arguments.of("end mark", "time,signal1,signal2\n-0.001,0.25,1\n0.000,12.5,2\n0.001,-3e-3,3\n\u001A"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("writings")
    void eachWritingGivesTheSameRecording(String name, String text) throws Exception {
        try (Capture capture = read(folder, text)) {
            isTheRecording(capture);
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("writings")
    void smallBuffersMakeNoDifference(String name, String text) throws Exception {
        for (int bufferBytes : new int[] {64, 65, 66, 67, 79}) {
            CsvCaptureReader reader = new CsvCaptureReader(new FastRows.Pace(bufferBytes, 1, false), 0);
            try (Capture capture = reader.read(file(folder, text), ReadSettings.none(), Progress.NONE)) {
                isTheRecording(capture);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-16LE", "UTF-16BE"})
    void textOfTwoBytesACharacterIsRead(String charset) throws Exception {
        String text = "\uFEFFtime,signal1,signal2\n-0.001,0.25,1\n0.000,12.5,2\n0.001,-3e-3,3\n";
        Path file = file(folder, text, Charset.forName(charset));
        try (Capture capture = new CsvCaptureReader().read(file, ReadSettings.none(), Progress.NONE)) {
            isTheRecording(capture);
            assertThat(capture.guessed()).containsEntry("encoding", charset);
        }
    }

    @Test
    void microsecondsInTheOldOneByteEncodingAreRead() throws Exception {
        Path file = file(folder, "t (µs),signal1\n0,1\n500,2\n1000,3\n", StandardCharsets.ISO_8859_1);
        try (Capture capture = new CsvCaptureReader().read(file, ReadSettings.none(), Progress.NONE)) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(2000);
        }
    }

    @Test
    void prefixesAndOtherUnitsBecomeBaseUnits() throws Exception {
        String text = """
                time (ms),signal1 (mV),current [mA],pressed (%),supply (kV),odd (left)
                0,5000,20,50,0.024,1
                1,250,21,51,0.025,2
                """;
        try (Capture capture = read(folder, text)) {
            assertThat(channels(capture))
                    .containsExactly("signal1 in V", "current in A", "pressed in %", "supply in V", "odd (left) in V");
            // one rounding of the product: 1 unit in the last place
            assertThat(valuesOf(capture, 0)[1]).isCloseTo(0.25, within(Math.ulp(0.25)));
            assertThat(valuesOf(capture, 1)[0]).isCloseTo(0.02, within(Math.ulp(0.02)));
            assertThat(valuesOf(capture, 3)[0]).isCloseTo(24, within(Math.ulp(24.0)));
            assertThat(capture.guessed()).containsEntry("units not known", "column 6 'odd (left)': 'left', taken as V");
        }
    }

    @Test
    void columnsWithoutHeadingsAreNumbered() throws Exception {
        try (Capture capture = read(folder, "0.000,1,10\n0.001,2,20\n0.002,5,10\n")) {
            assertThat(channels(capture)).containsExactly("channel1 in V", "channel2 in V");
            assertThat(capture.guessed())
                    .containsEntry("header line", "none")
                    .containsEntry("time column", "column 1, recognised as the only one that rises evenly");
        }
        try (Capture capture = read(folder, "3.5\n3.6\n3.4\n", AT_1_KHZ)) {
            assertThat(channels(capture)).containsExactly("channel1 in V");
            assertThat(valuesOf(capture, 0)).containsExactly(3.5, 3.6, 3.4);
        }
    }

    @Test
    void aColumnThatCountsTheRowsIsNoTimeAndNoChannel() throws Exception {
        try (Capture capture = read(folder, "1,5\n2,6\n3,5\n", AT_1_KHZ)) {
            assertThat(channels(capture)).containsExactly("channel1 in V");
            assertThat(valuesOf(capture, 0)).containsExactly(5, 6, 5);
            assertThat(capture.guessed()).containsEntry("columns left out", "column 1: counts the rows");
        }
    }

    @Test
    void namesThatOccurTwiceGetANumber() throws Exception {
        try (Capture capture = read(folder, "time,signal1,signal1,signal1_2,signal1\n0,1,2,3,4\n1,1,2,3,4\n")) {
            assertThat(channels(capture))
                    .containsExactly("signal1 in V", "signal1_3 in V", "signal1_2 in V", "signal1_4 in V");
        }
    }

    @Test
    void quotedHeadingsMayHoldDelimitersAndLineBreaks() throws Exception {
        String text = "time,\"signal1, the\nupper one (V)\",\"say \"\"two\"\" (mV)\"\n0,1,2000\n0.5,3,4000\n";
        try (Capture capture = read(folder, text)) {
            assertThat(channels(capture)).containsExactly("signal1, the upper one in V", "say \"two\" in V");
            assertThat(valuesOf(capture, 1)).containsExactly(2, 4);
            assertThat(capture.guessed()).containsEntry("header line", "1");
        }
    }

    @Test
    void quotesThatComeUpLateAreUnderstood() throws Exception {
        StringBuilder text = new StringBuilder("time,note,signal1\n");
        for (int i = 0; i < 60_000; i++) {
            String note = i == 50_000 ? "\"a, b\nand c\"" : "x";
            text.append(i).append("e-3,").append(note).append(',').append(i % 7).append('\n');
        }
        try (Capture capture = read(folder, text.toString())) {
            assertThat(capture.sampleCount()).isEqualTo(60_000);
            assertThat(valuesOf(capture, 0)[50_000]).isEqualTo(50_000 % 7);
            assertThat(capture.timeBase().segments()).hasSize(1);
        }
    }

    @Test
    void whatWasDecidedIsTold() throws Exception {
        String text =
                "Yard: Harrow & Tern\nTime [ms];signal1;empty;spare\nms;mV;V;V\n0,00000;1;;\n0,5;2;;5\n1,0;3;;\n2,00000;3;;\n";
        try (Capture capture = read(folder, text)) {
            assertThat(capture.guessed().toString())
                    .isEqualTo("{encoding=UTF-8, delimiter=semicolon, decimal mark=comma, preamble lines=1,"
                            + " header line=2, unit line=3, time column=column 1 'Time [ms]', recognised by its heading,"
                            + " time unit=ms, as the file says, columns left out=column 3 'empty': empty;"
                            + " column 4 'spare': mostly empty, time base=even, found from the time column,"
                            + " sample rate=2000.0 Hz, gaps=1, where rows lie more than 1.5 steps apart}");
        }
    }

    @Test
    void aCommaIsBothWhereQuotesTellTheOneFromTheOther() throws Exception {
        try (Capture capture =
                read(folder, "\"time\",\"signal1\"\n\"0,5\",\"1,25\"\n\"0,6\",\"2\"\n\"0,7\",\"3,5\"\n")) {
            assertThat(valuesOf(capture, 0)).containsExactly(1.25, 2, 3.5);
            assertThat(capture.guessed()).containsEntry("delimiter", "comma").containsEntry("decimal mark", "comma");
        }
    }

    @Test
    void textInTwoBytesWithoutAMarkIsRead() throws Exception {
        String text = "time (ms),signal1 (mV)\n0,100\n1,200\n2,300\n";
        for (Charset charset : List.of(StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
            Path file = CsvText.file(folder, text, charset);
            try (Capture capture = new CsvCaptureReader().read(file, ReadSettings.none(), Progress.NONE)) {
                assertThat(valuesOf(capture, 0)).containsExactly(0.1, 0.2, 0.3);
            }
        }
    }

    @Test
    void aNumberThatIsSaidToHaveNoUnitHasNone() throws Exception {
        try (Capture capture = read(folder, "t,bit [-],count\ns,,-\n0,1,5\n1,0,6\n2,1,6\n")) {
            assertThat(channels(capture)).containsExactly("bit in ", "count in ");
        }
    }

    @Test
    void textBesideTheFirstRowsDoesNoHarm() throws Exception {
        String text =
                "Model,X5,,0.0,1.5\nRate,1 kS/s,,0.001,1.6\n,,,0.002,1.5\n,,,0.003,1.4\n,,,0.004,1.5\n,,,0.005,1.4\n";
        try (Capture capture = read(folder, text)) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(1000);
            assertThat(valuesOf(capture, 0)).containsExactly(1.5, 1.6, 1.5, 1.4, 1.5, 1.4);
        }
    }
}
