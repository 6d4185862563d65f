// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.wav;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sound files written by hand. Expected values are the definition of each coding. */
class WavReaderTest {
    private static final byte[] TWO = {0, 0x40, 0, (byte) 0x80};

    @TempDir
    Path folder;

    @Test
    void aFileIsKnownByItsFirstTwelveBytes() {
        byte[] wave = WavBytes.riff().format(1, 1, 8000, 16).data(TWO).toBytes();
        assertThat(new WavCaptureReader().likelihood(wave)).isEqualTo(100);
        assertThat(new WavCaptureReader().likelihood(Arrays.copyOf(wave, 11))).isZero();
        wave[8] = 'X';
        assertThat(new WavCaptureReader().likelihood(wave)).isZero();
    }

    @Test
    void wholeNumbersBecomeSharesOfFullScale() throws Exception {
        assertThat(read(WavBytes.riff().format(1, 1, 8000, 16).data(TWO))).containsExactly(0.5, -1);
        assertThat(read(WavBytes.riff().format(1, 1, 8000, 8).data((byte) 0, (byte) 128, (byte) 192)))
                .containsExactly(-1, 0, 0.5);
        assertThat(read(WavBytes.riff()
                        .format(1, 1, 8000, 24)
                        .data((byte) 0, (byte) 0, (byte) 0xC0, b(0), b(0), b(32))))
                .containsExactly(-0.5, 0.25);
        assertThat(read(WavBytes.rifx().format(1, 1, 8000, 24).data(b(0xC0), b(0), b(0), b(32), b(0), b(0))))
                .containsExactly(-0.5, 0.25);
    }

    @Test
    void everyWidthUpTo64BitsIsReadInBothByteOrders() throws Exception {
        for (int bits = 9; bits <= 64; bits++) {
            int bytes = (bits + 7) / 8;
            // left-justified: -1/2 is the sign bit and the next, 1/4 the third
            byte[] little = new byte[2 * bytes];
            little[bytes - 1] = b(0xC0);
            little[2 * bytes - 1] = b(0x20);
            byte[] big = new byte[2 * bytes];
            big[0] = b(0xC0);
            big[bytes] = b(0x20);
            assertThat(read(WavBytes.riff().format(1, 1, 100, bits).data(little)))
                    .containsExactly(-0.5, 0.25);
            assertThat(read(WavBytes.rifx().format(1, 1, 100, bits).data(big))).containsExactly(-0.5, 0.25);
        }
    }

    @Test
    void floatsAreTakenAsTheyAreAndThoseThatAreNoNumbersLeaveAGap() throws Exception {
        ByteBuffer floats = ByteBuffer.allocate(20).order(ByteOrder.LITTLE_ENDIAN);
        floats.putFloat(0.5f).putFloat(-2).putFloat(Float.NaN).putFloat(3).putFloat(4);
        try (Capture capture = open(WavBytes.riff().format(3, 1, 10, 32).data(floats.array()), ReadSettings.none())) {
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0.5, -2, 3, 4);
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 0.1, 0.3, 0.4);
            assertThat(capture.timeBase().segments()).hasSize(2);
            assertThat(capture.guessed()).containsEntry("samples left out", "1, because they hold no number");
        }
        ByteBuffer doubles = ByteBuffer.allocate(16).putDouble(0.1).putDouble(-7);
        assertThat(read(WavBytes.rifx().format(3, 1, 10, 64).data(doubles.array())))
                .containsExactly(0.1, -7);
    }

    /** ITU-T G.711: the ends of tables 1 and 2, 4032 of 4096 and 8031 of 8192; the smallest steps are 1 and 2. */
    @Test
    void compandedBytesAreExpanded() throws Exception {
        assertThat(read(WavBytes.riff().format(6, 1, 8000, 8).data(b(0xAA), b(0x2A), b(0xD5), b(0x55))))
                .containsExactly(4032 / 4096.0, -4032 / 4096.0, 1 / 4096.0, -1 / 4096.0);
        assertThat(read(WavBytes.riff().format(7, 1, 8000, 8).data(b(0x80), b(0x00), b(0xFF), b(0x7F), b(0xFE))))
                .containsExactly(8031 / 8192.0, -8031 / 8192.0, 0, 0, 2 / 8192.0);
    }

    @Test
    void channelsAreNamedByNumberAndHaveNoUnitUntilAScaleSaysTheVoltsOfFullScale() throws Exception {
        WavBytes wav =
                WavBytes.riff().extensible(1, 2, 8000, 16).data(b(0), b(64), b(0), b(32), b(0), b(0), b(0), b(0));
        try (Capture capture = open(wav, CaptureValues.scale("channel2", 20))) {
            assertThat(CaptureValues.channels(capture)).containsExactly("channel1", "channel2 in V");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0.5, 0);
            assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(5, 0);
            assertThat(capture.guessed().get("values")).contains("shares of full scale", "--scale NAME=VOLTS");
            assertThat(capture.samples().counts(1))
                    .hasValueSatisfying(scale -> assertThat(scale.scale()).isEqualTo(20 / 32768.0));
        }
    }

    @Test
    void chunksThatAreNotKnownAreSkippedWithTheirPadding() throws Exception {
        WavBytes wav = WavBytes.riff()
                .chunk("junk", new byte[5])
                .format(1, 1, 8000, 16)
                .chunk("LIST", new byte[7])
                .data(TWO)
                .chunk("LIST", new byte[3]);
        assertThat(read(wav)).containsExactly(0.5, -1);
    }

    @Test
    void samplesThatDeclareNoLengthReachToTheEnd() throws Exception {
        for (int declared : new int[] {0, -1}) {
            WavBytes wav =
                    WavBytes.riff().format(1, 1, 8000, 16).dataHeader(declared).raw(TWO);
            assertThat(read(wav)).containsExactly(0.5, -1);
        }
        assertThat(read(WavBytes.rf64(4)
                        .format(1, 1, 8000, 16)
                        .dataHeader(-1)
                        .raw(TWO)
                        .chunk("LIST", new byte[4])))
                .containsExactly(0.5, -1);
        assertThatThrownBy(
                        () -> read(WavBytes.riff().format(1, 1, 8000, 16).data().chunk("LIST", new byte[40])))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("no complete row");
    }

    @Test
    void aFileThatIsCutOffIsReadToItsLastWholeSample() throws Exception {
        WavBytes wav =
                WavBytes.riff().format(1, 1, 8000, 16).dataHeader(1000).raw(TWO).raw(b(1));
        try (Capture capture = open(wav, ReadSettings.none())) {
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0.5, -1);
            assertThat(capture.guessed()).containsEntry("length", "declared as 1000 bytes, cut off after 5");
        }
    }

    @Test
    void aWrongBlockSizeGivesWayToTheBitsAndAWideOneHoldsNarrowSamples() throws Exception {
        assertThat(read(WavBytes.riff().format(1, 1, 8000, 0, 16).data(TWO))).containsExactly(0.5, -1);
        // 12 bits, left-justified in four bytes
        assertThat(read(WavBytes.riff()
                        .format(1, 1, 8000, 4, 12)
                        .data(b(0), b(0), b(0), b(64), b(0), b(0), b(0), b(0))))
                .containsExactly(0.5, 0);
    }

    @Test
    void aMissingSampleRateIsAskedForAndOneInTheFileHolds() throws Exception {
        WavBytes none = WavBytes.riff().format(1, 1, 0, 16).data(TWO);
        assertThatThrownBy(() -> read(none)).hasMessageContaining("--sample-rate HZ");
        try (Capture capture = open(none, CaptureValues.at(500))) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(500);
        }
        try (Capture capture = open(WavBytes.riff().format(1, 1, 8000, 16).data(TWO), CaptureValues.at(500))) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(8000);
            assertThat(capture.guessed()).containsKey("given sample rate");
        }
    }

    @Test
    void brokenFilesAreRefusedWithTheByte() {
        refused(WavBytes.riff(), "byte 12: the file ends inside the chunks before the samples");
        refused(WavBytes.riff().data(TWO), "byte 12: the samples come before the format chunk");
        refused(WavBytes.riff().format(0x55, 1, 8000, 16).data(TWO), "byte 20: is coded in a way", "0x0055");
        refused(WavBytes.riff().format(1, 0, 8000, 16).data(TWO), "byte 22: declares 0 channels");
        refused(WavBytes.riff().format(1, 0xFFFF, 8000, 16).data(TWO), "byte 22: declares 65535 channels");
        refused(WavBytes.riff().format(3, 1, 8000, 24).data(TWO), "byte 34: has samples of 24 bits in 3 bytes");
        refused(WavBytes.riff().format(1, 1, 8000, 72).data(TWO), "byte 34: has samples of 72 bits in 9 bytes");
        refused(WavBytes.riff().format(1, 1, 8000, 16).data(b(1), b(2)), "holds one row");
        refused(WavBytes.riff().chunk("fmt ", new byte[4]).data(TWO), "byte 20: the format chunk is too short");
    }

    private void refused(WavBytes wav, String... said) {
        assertThatThrownBy(() -> read(wav))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContainingAll(said)
                .hasMessageStartingWith(folder.toString());
    }

    private static byte b(int value) {
        return (byte) value;
    }

    private double[] read(WavBytes wav) throws UnreadableException, IOException {
        try (Capture capture = open(wav, ReadSettings.none())) {
            return CaptureValues.valuesOf(capture, 0);
        }
    }

    private Capture open(WavBytes wav, ReadSettings settings) throws UnreadableException, IOException {
        Path file = Files.write(folder.resolve("pedal.wav"), wav.toBytes());
        return new WavCaptureReader().read(file, settings, Progress.NONE);
    }
}
