// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.vcd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Segment;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Dumps written by hand. */
class VcdReaderTest {
    private static final String HEAD = """
            $date today $end
            $timescale 1 us $end
            $scope module yard $end
            $var wire 1 ! signal1 $end
            $var wire 1 " signal2 $end
            $upscope $end
            $enddefinitions $end
            """;

    @TempDir
    Path folder;

    @Test
    void aDumpIsKnownByItsFirstWord() {
        assertThat(likelihood(HEAD)).isEqualTo(90);
        assertThat(likelihood("  $timescale 1ns $end")).isEqualTo(90);
        assertThat(likelihood("$100;200\n$end")).isZero();
        assertThat(likelihood("time,signal1\n0,1\n")).isZero();
    }

    private static int likelihood(String text) {
        return new VcdCaptureReader().likelihood(text.getBytes(StandardCharsets.US_ASCII));
    }

    @Test
    void eachInstantOfAChangeBecomesTwoRowsWhatHeldUntilThenAndWhatHoldsFromThenOn() throws Exception {
        try (Capture capture = read(HEAD + "#0\n$dumpvars\n0!\n1\"\n$end\n#1000\n1!\n#1500\n0\"\n0!\n#9000\n")) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal1", "signal2");
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 1e-3, 1e-3, 1.5e-3, 1.5e-3, 9e-3);
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0, 0, 1, 1, 0, 0);
            assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(1, 1, 1, 1, 0, 0);
            assertThat(capture.timeBase().sampleRateHz()).isEmpty();
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(1e-6);
            assertThat(capture.timeBase().segments()).containsExactly(new Segment(0, 6, 0));
            assertThat(capture.guessed()).containsEntry("unit of time", "1.0E-6 s");
        }
    }

    @Test
    void theNumberOfRowsDoesNotDependOnHowLongTheDumpIs() throws Exception {
        try (Capture capture = read(HEAD + "#0\n0!\n0\"\n#9000000000000000\n1!\n")) {
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 9e9, 9e9);
        }
    }

    @Test
    void whatDoesNotChangeMakesNoRows() throws Exception {
        try (Capture capture = read(HEAD + "#0 0! 0\" #1 0! #2 1! 0! #3 1! #4")) {
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 3e-6, 3e-6, 4e-6);
        }
    }

    @Test
    void realsAndWideVariablesBecomeNumbers() throws Exception {
        String head = "$timescale 100ns $end $var real 64 r volts $end $var reg 4 ab! count [3:0] $end "
                + "$var event 1 e tick $end $var reg 64 w wide $end $enddefinitions $end ";
        try (Capture capture = read(head + "#0 r1.5 r b101 ab! 1e bx w #10 r-2e-3 r B1111 ab! #20")) {
            assertThat(CaptureValues.channels(capture)).containsExactly("volts", "count");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(1.5, 1.5, -2e-3, -2e-3);
            assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(5, 5, 15, 15);
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 1e-6, 1e-6, 2e-6);
            assertThat(capture.guessed().get("signals left out"))
                    .contains("tick: has no value", "wide: more than 53 bits");
        }
    }

    @Test
    void spansWithoutAValueAreGaps() throws Exception {
        try (Capture capture = read(HEAD + "#0 x! 1\" #5 0! #10 z! #20 1\" #30 1! #40 0!")) {
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(5e-6, 10e-6, 30e-6, 40e-6, 40e-6);
            assertThat(capture.timeBase().segments())
                    .containsExactly(new Segment(0, 2, 5e-6), new Segment(2, 3, 30e-6));
            assertThat(capture.guessed()).containsEntry("spans without a value", "1");
        }
        try (Capture capture = read(HEAD + "#0 0! 1\" #5 $dumpoff x! x\" $end #9 $dumpon 1! 1\" $end #12 0!")) {
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 5e-6, 9e-6, 12e-6, 12e-6);
        }
    }

    @Test
    void aSignalThatIsNeverKnownStandsInNobodysWayUnlessItWasPicked() throws Exception {
        String dump = HEAD + "#0 x! 1\" #5 0\" #6";
        try (Capture capture = read(dump)) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal2");
            assertThat(capture.guessed()).containsEntry("signals left out", "yard.signal1: never has a value");
        }
        Path file = folder.resolve("dump.vcd");
        assertThatThrownBy(() ->
                        new VcdCaptureReader().read(file, CaptureValues.pick("signal1", "signal2"), Progress.NONE))
                .hasMessageContaining("'signal1' never has a value");
    }

    @Test
    void signalsWithAnIdentifierInCommonAreOneAndEqualNamesGetTheirScopes() throws Exception {
        String head = "$timescale 1s $end $scope module a $end $var wire 1 ! out $end $var wire 1 # in $end "
                + "$scope module b $end $var wire 1 % out $end $var wire 1 # in $end $upscope $end $upscope $end "
                + "$enddefinitions $end ";
        try (Capture capture = read(head + "#0 0! 0# 0% #1 1! #2 1#")) {
            assertThat(CaptureValues.channels(capture)).containsExactly("a.out", "in", "a.b.out");
        }
        try (Capture capture =
                new VcdCaptureReader().read(folder.resolve("dump.vcd"), CaptureValues.pick("a.in"), Progress.NONE)) {
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0, 0, 1);
        }
    }

    @Test
    void aScaleMakesVoltsOfTheTwoLevels() throws Exception {
        Path file = Files.writeString(folder.resolve("dump.vcd"), HEAD + "#0 0! 0\" #1 1! #2");
        try (Capture capture = new VcdCaptureReader().read(file, CaptureValues.scale("signal1", 5), Progress.NONE)) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal1 in V", "signal2");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0, 0, 5, 5);
        }
    }

    @Test
    void brokenDumpsAreRefusedWithTheLine() {
        refused("$timescale 1us $end\n$var wire 1 ! s", "line 2: the file ends inside $var");
        refused(HEAD.replace("1 us", "3 us"), "line 2: '3us' is no unit of time");
        refused(HEAD.replace("$timescale 1 us $end", ""), "no unit of time is declared");
        refused("$timescale 1us $end\n$enddefinitions $end\n", "line 2: no signal is declared");
        refused(HEAD.replace("wire 1 !", "wire one !"), "line 4: a variable is declared without");
        refused(HEAD.replace("$scope", "scope"), "line 3: 'scope' stands where a declaration");
        refused(HEAD + "#0 0! 0\"\n#5 1!\n#4 0!\n", "line 10: time goes back from 5 to 4");
        refused(HEAD + "#99999999999999999999 0!", "is no instant");
        refused(HEAD + "#0 2!", "line 8: '2!' is no change of a value");
        refused(HEAD + "#0 b12 !", "'b12' is no binary number");
        refused(HEAD + "#0 rone !", "'one' is no number");
        refused(HEAD + "#0 1", "a change names no signal");
        refused(HEAD + "#0 b1", "line 8: the file ends inside a change");
        refused(HEAD + "#0 $stop", "'$stop' is not known among the changes");
        refused(HEAD + "#0 1! 1\" $comment never ends", "the file ends inside $comment");
        refused(HEAD + "#0 1! 1\"", "holds one row");
        refused(HEAD, "'signal1' never has a value");
        refused(HEAD + "#" + "1".repeat(70_000), "a word is longer than 65536 characters");
    }

    private void refused(String dump, String said) {
        assertThatThrownBy(() -> read(dump))
                .isInstanceOf(UnreadableException.class)
                .hasMessageStartingWith(folder.toString())
                .hasMessageContaining(said);
    }

    private Capture read(String dump) throws UnreadableException, IOException {
        Path file = Files.writeString(folder.resolve("dump.vcd"), dump);
        return new VcdCaptureReader().read(file, ReadSettings.none(), Progress.NONE);
    }
}
