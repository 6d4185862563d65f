// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files written by {@code releng/reference/formats/make_hdf5.py} with h5py 3.16.0 on HDF5 2.0.0: sample i of channel k is
 * (i - 2) (k + 1) / 4, exact in every type, 10,000 a second.
 */
public class Hdf5ReaderTest {
    private static final int ROWS = 240;

    @TempDir
    Path folder;

    private Path file(String name) throws IOException {
        Path file = folder.resolve(name);
        try (InputStream stream = Hdf5ReaderTest.class.getResourceAsStream(name)) {
            Files.write(file, stream.readAllBytes());
        }
        return file;
    }

    private Capture read(String name, ReadSettings settings) throws UnreadableException, IOException {
        return new Hdf5CaptureReader().read(file(name), settings, Progress.NONE);
    }

    private static double[] channel(int k, double factor, double offset) {
        return IntStream.range(0, ROWS)
                .mapToDouble(i -> ((i - 2) * (k + 1) / 4.0 + offset) * factor)
                .toArray();
    }

    @Test
    void arraysOfAGroupAreReadWithTheirTimeAndUnits() throws Exception {
        try (Capture capture = read("channels.h5", ReadSettings.none())) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal1 in V", "signal2 in V");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(channel(0, 1, 0));
            assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(channel(1, 0.001, 0));
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(1e-4);
            assertThat(capture.guessed())
                    .containsEntry("time column", "array Waveforms/time, in units of 0.001 s")
                    .containsEntry("arrays not used", "curve, of another length or time");
        }
    }

    @Test
    void everyIndexOfChunksIsRead() throws Exception {
        try (Capture capture = read("indexes.h5", ReadSettings.none())) {
            assertThat(CaptureValues.channels(capture))
                    .containsExactlyInAnyOrder(
                            "single in V", "fixed in V", "extensible in V", "plain in V", "tree1 in V", "tree2 in V");
            List<String> names = List.of("single", "fixed", "extensible", "plain", "tree1", "tree2");
            for (int channel = 0; channel < 6; channel++) {
                int k = names.indexOf(capture.channels().get(channel).name());
                assertThat(CaptureValues.valuesOf(capture, channel)).containsExactly(channel(k, 1, 0));
            }
            assertThat(CaptureValues.secondsOf(capture)[0]).isEqualTo(-0.5);
            assertThat(capture.guessed()).containsEntry("sample rate found", "10000.0 Hz, from record/sample_rate");
        }
    }

    @Test
    void countsBecomeVoltsByTheirScaleAndOffset() throws Exception {
        try (Capture capture = read("counts.h5", ReadSettings.none())) {
            assertThat(CaptureValues.channels(capture)).containsExactly("adc1 in V", "adc2 in V", "gate");
            double[] first = CaptureValues.valuesOf(capture, 0);
            // the count 7 stands for none: row 9 is left out
            assertThat(first).hasSize(ROWS - 1);
            assertThat(first[8]).isEqualTo(6 * 0.25 + 1);
            assertThat(first[9]).isEqualTo(8 * 0.25 + 1);
            assertThat(CaptureValues.valuesOf(capture, 2)).startsWith(0, 0, 0, 1, 1);
            // the step is the 32-bit number nearest to 100, times a millionth
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(1e-4);
            assertThat(capture.samples().counts(0)).contains(new CountScale(0.25, 1));
        }
    }

    @Test
    void whatIsNoArrayOfNumbersIsLeftOutAndSaidSo() throws Exception {
        try (Capture capture = read("odd.h5", ReadSettings.none())) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal1 in V");
            assertThat(capture.guessed().get("left out"))
                    .contains(
                            "complex (complex numbers)",
                            "table (a table)",
                            "names (texts or lists of varying length)",
                            "cube (more than two dimensions)",
                            "again, group/round (another name of what is elsewhere in the file)",
                            "soft, outside (a link, not followed)");
        }
    }

    @Test
    void chunksThatWereNeverWrittenEndTheRecording() throws Exception {
        try (Capture capture = read("unfinished.h5", ReadSettings.none())) {
            // chunks of 100 were written for 240 samples, the rest of the third is what HDF5 fills it with
            assertThat(capture.sampleCount()).isEqualTo(300);
            assertThat(CaptureValues.valuesOf(capture, 0))
                    .startsWith(channel(0, 1, 0))
                    .endsWith(0, 0, 0);
            assertThat(capture.guessed())
                    .containsEntry("length", "declared as 2400 rows, the file holds 300")
                    .containsEntry("sample rate found", "10000.0 Hz, from fs_kHz");
        }
    }

    @Test
    void groupsAndAttributesInHeapsAreRead() throws Exception {
        try (Capture capture = read("many.h5", ReadSettings.none())) {
            assertThat(capture.channels()).hasSize(30);
            assertThat(capture.channels())
                    .extracting(channel -> channel.name())
                    .startsWith("ch0", "ch1", "ch2")
                    .endsWith("ch28", "ch29");
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(1e-4);
        }
    }

    @Test
    void layoutsThatAreNotKnownAreLeftOutAndSaidSo() throws Exception {
        try (Capture capture = read("newest.h5", ReadSettings.none())) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal2 in V");
            assertThat(capture.guessed())
                    .hasEntrySatisfying("left out", said -> assertThat(said).startsWith("signal1 (kept in a layout"));
        }
    }

    @Test
    void aMatFileOfLevelSevenPointThreeIsRead() throws Exception {
        try (Capture capture = read("level-7.3.mat", ReadSettings.none())) {
            assertThat(CaptureValues.channels(capture))
                    .containsExactlyInAnyOrder("pair.both1 in V", "pair.both2 in V", "signal1 in V", "signal2 in V");
            List<String> names = List.of("signal1", "signal2", "pair.both1", "pair.both2");
            for (int channel = 0; channel < 4; channel++) {
                int k = names.indexOf(capture.channels().get(channel).name());
                assertThat(CaptureValues.valuesOf(capture, channel)).containsExactly(channel(k, k == 1 ? 1e-3 : 1, 0));
            }
            assertThat(capture.guessed())
                    .containsEntry("sample rate found", "10000.0 Hz, from Fs")
                    .containsEntry("left out", "cells (of class cell); nothing (empty)");
        }
    }

    @Test
    void aChannelOfAnotherRecordingIsPickedByItsPath() throws Exception {
        ReadSettings settings = new ReadSettings(
                CaptureValues.at(50).sampleRateHz(),
                List.of(new ReadSettings.Pick("curve", "curve")),
                java.util.Map.of());
        try (Capture capture = read("channels.h5", settings)) {
            assertThat(capture.sampleCount()).isEqualTo(17);
            assertThat(CaptureValues.valuesOf(capture, 0)[16]).isEqualTo(1);
        }
    }

    @Test
    void aFileCutOffIsRefusedWithTheByte() throws Exception {
        Path file = file("channels.h5");
        byte[] bytes = Files.readAllBytes(file);
        Files.write(file, java.util.Arrays.copyOf(bytes, 9000));
        assertThatThrownBy(() -> new Hdf5CaptureReader().read(file, ReadSettings.none(), Progress.NONE))
                .isInstanceOf(UnreadableException.class)
                .hasMessage(file + ", byte 9000: the file is cut off: it declares " + bytes.length
                        + " bytes; copy it again");
    }

    @Test
    void aFileIsKnownByItsContent() throws Exception {
        assertThat(new Hdf5CaptureReader().likelihood(Files.readAllBytes(file("level-7.3.mat"))))
                .isEqualTo(100);
        assertThat(new Hdf5CaptureReader().likelihood(new byte[600])).isZero();
    }
}
