// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.mat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Files written by {@code releng/reference/formats/make_mat.py} with SciPy 1.17.1: sample i of channel k is
 * (i - 2) (k + 1) / 4, or the size of (i - 2) (k + 1) in whole numbers, exact in every type, 10,000 a second.
 */
public class MatReaderTest {
    private static final int ROWS = 240;

    @TempDir
    Path folder;

    private Path file(String name) throws IOException {
        Path file = folder.resolve(name);
        try (InputStream stream = MatReaderTest.class.getResourceAsStream(name)) {
            Files.write(file, stream.readAllBytes());
        }
        return file;
    }

    private Capture read(String name) throws UnreadableException, IOException {
        return new MatCaptureReader().read(file(name), ReadSettings.none(), Progress.NONE);
    }

    private static double[] channel(int k, double factor) {
        return IntStream.range(0, ROWS)
                .mapToDouble(i -> (i - 2) * (k + 1) / 4.0 * factor)
                .toArray();
    }

    private static double[] counts(int k, double factor) {
        return IntStream.range(0, ROWS)
                .mapToDouble(i -> Math.abs((i - 2) * (k + 1)) * factor)
                .toArray();
    }

    @ParameterizedTest
    @ValueSource(strings = {"columns.mat", "rows.mat"})
    void vectorsAreReadWithTheirTime(String name) throws Exception {
        try (Capture capture = read(name)) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal1 in V", "signal2 in V");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(channel(0, 1));
            assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(channel(1, 1));
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(1e-4);
            assertThat(capture.guessed()).containsEntry("time column", "array t, in s");
        }
    }

    @Test
    void theColumnsOfAMatrixAreChannels() throws Exception {
        try (Capture capture = read("matrix.mat")) {
            assertThat(CaptureValues.channels(capture)).containsExactly("data1 in V", "data2 in V", "data3 in V");
            for (int k = 0; k < 3; k++) {
                assertThat(CaptureValues.valuesOf(capture, k)).containsExactly(channel(k, 1e-3));
            }
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(1e-4);
            assertThat(CaptureValues.secondsOf(capture)[0]).isEqualTo(-1);
        }
    }

    @Test
    void fieldsOfStructsAreReadWithScaleUnitAndRateAroundThem() throws Exception {
        try (Capture capture = read("structs.mat")) {
            assertThat(CaptureValues.channels(capture))
                    .containsExactly("channel.signal1 in V", "more.u1", "more.i4", "more.u8", "more.gate");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(counts(0, 0.5));
            assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(counts(0, 1));
            assertThat(CaptureValues.valuesOf(capture, 2)).containsExactly(counts(1, 1));
            assertThat(CaptureValues.valuesOf(capture, 3)).containsExactly(counts(2, 1));
            assertThat(CaptureValues.valuesOf(capture, 4)).startsWith(0, 0, 0, 0, 0, 0, 0, 0, 1);
            assertThat(capture.guessed()).containsEntry("sample rate found", "10000.0 Hz, from run.Fs");
        }
    }

    @Test
    void whatIsNoArrayOfNumbersIsLeftOutAndSaidSo() throws Exception {
        try (Capture capture = read("odd.mat")) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal1 in V");
            assertThat(capture.guessed().get("left out"))
                    .contains(
                            "complex (complex numbers)",
                            "cells (cell)",
                            "sparse (sparse)",
                            "structs (an array of structs)",
                            "cube (more than two dimensions");
        }
    }

    @Test
    void theOtherByteOrderIsRead() throws Exception {
        try (Capture capture = read("swapped.mat")) {
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(channel(0, 1));
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(1e-4);
        }
    }

    @Test
    void levelFourIsRefused() throws Exception {
        Path file = file("level-4.mat");
        assertThat(new MatCaptureReader().likelihood(Files.readAllBytes(file))).isPositive();
        assertThatThrownBy(() -> new MatCaptureReader().read(file, ReadSettings.none(), Progress.NONE))
                .hasMessage(file + ", byte 0: is a MAT-file of level 4; save it with -v7 or -v7.3");
    }

    @Test
    void aFileCutOffIsRefusedWithTheByte() throws Exception {
        Path file = file("columns.mat");
        Files.write(file, Arrays.copyOf(Files.readAllBytes(file), 3000));
        assertThatThrownBy(() -> new MatCaptureReader().read(file, ReadSettings.none(), Progress.NONE))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("byte ")
                .hasMessageContaining("the file is cut off: an element declares ");
    }

    @Test
    void cancellingIsHeardWhileTheLibraryReads() throws Exception {
        Path file = file("rows.mat");
        Progress progress = new Progress() {
            private long bytes;

            @Override
            public void begin(String task, long totalWork) {
                bytes = totalWork;
            }

            @Override
            public void worked(long work) {
                bytes -= work;
            }

            @Override
            public boolean isCancelled() {
                // once the file was read for its sum, the library is next
                return bytes == 0;
            }
        };
        assertThatThrownBy(() -> new MatCaptureReader().read(file, ReadSettings.none(), progress))
                .isInstanceOf(CancelledException.class);
    }

    @Test
    void aFileIsKnownByItsContent() throws Exception {
        assertThat(new MatCaptureReader().likelihood(Files.readAllBytes(file("rows.mat"))))
                .isEqualTo(100);
        assertThat(new MatCaptureReader()
                        .likelihood("MATLAB 5.0 MAT-file".getBytes(java.nio.charset.StandardCharsets.US_ASCII)))
                .isZero();
        assertThat(new MatCaptureReader().likelihood(new byte[600])).isZero();
    }
}
