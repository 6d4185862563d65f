// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.dutywright.capture.formats.csv.CsvText.file;
import static org.dutywright.capture.formats.csv.CsvText.valuesOf;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CsvLargeTest {
    private static final int ROWS = 200_000;

    @TempDir
    Path folder;

    /** Adds up what is reported and asks to stop at some point. */
    private static final class Recorder implements Progress {
        private final long stopAfter;
        private long total;
        private long done;

        Recorder(long stopAfter) {
            this.stopAfter = stopAfter;
        }

        @Override
        public void begin(String task, long totalWork) {
            total = totalWork;
            done = 0;
        }

        @Override
        public void worked(long work) {
            done += work;
            assertThat(done).isLessThanOrEqualTo(total);
        }

        @Override
        public boolean isCancelled() {
            return done > stopAfter;
        }
    }

    private Path random(double[][] values) throws IOException {
        Random random = new Random(20261125);
        StringBuilder text = new StringBuilder("time (ms),signal1,signal2\n");
        for (int i = 0; i < ROWS; i++) {
            for (int column = 0; column < 2; column++) {
                values[column][i] = random.nextGaussian() * Math.pow(10, random.nextInt(9) - 4);
            }
            // shortest digits that give the same double back
            text.append(i * 0.5)
                    .append(',')
                    .append(values[0][i])
                    .append(',')
                    .append(values[1][i])
                    .append('\n');
        }
        return file(folder, text.toString());
    }

    @Test
    void aFileFarAboveTheHeapsShareGivesExactlyItsNumbers() throws Exception {
        double[][] values = new double[2][ROWS];
        Path file = random(values);
        Recorder progress = new Recorder(Long.MAX_VALUE);
        try (Capture small = new CsvCaptureReader(new FastRows.Pace(1 << 12, 1, false), 1000)
                        .read(file, ReadSettings.none(), progress);
                Capture heap = new CsvCaptureReader(new FastRows.Pace(1 << 20, 1, false), Long.MAX_VALUE)
                        .read(file, ReadSettings.none(), Progress.NONE)) {
            assertThat(progress.done).isEqualTo(Files.size(file)).isEqualTo(progress.total);
            for (int channel = 0; channel < 2; channel++) {
                assertThat(valuesOf(small, channel)).isEqualTo(values[channel]);
                assertThat(valuesOf(heap, channel)).isEqualTo(values[channel]);
            }
            assertThat(small.timeBase().sampleRateHz()).hasValue(2000);
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
            assertThat(small.sources().get(0).sha256()).isEqualTo(HexFormat.of().formatHex(digest));
        }
    }

    @Test
    void theQuotedWayGivesTheSameNumbersAndDigest() throws Exception {
        double[][] values = new double[2][ROWS];
        Path plain = random(values);
        Path quoted = folder.resolve("quoted.csv");
        Files.writeString(quoted, Files.readString(plain).replace(",", "\",\""));
        Files.writeString(
                quoted, Files.readString(quoted).replace("\n", "\"\n\"").replaceAll("\"\\z", ""));
        Files.writeString(quoted, "\"" + Files.readString(quoted));
        Recorder progress = new Recorder(Long.MAX_VALUE);
        try (Capture capture = new CsvCaptureReader(new FastRows.Pace(1 << 12, 1, false), 1000)
                .read(quoted, ReadSettings.none(), progress)) {
            assertThat(valuesOf(capture, 1)).isEqualTo(values[1]);
            assertThat(progress.done).isEqualTo(Files.size(quoted));
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(quoted));
            assertThat(capture.sources().get(0).sha256())
                    .isEqualTo(HexFormat.of().formatHex(digest));
        }
    }

    @Test
    void cancellingLeavesNoTemporaryFile() throws Exception {
        Path file = random(new double[2][ROWS]);
        long before = openSpillFiles();
        for (long stopAfter : new long[] {0, 1 << 16, Files.size(file) - 1}) {
            CsvCaptureReader reader = new CsvCaptureReader(new FastRows.Pace(1 << 12, 1, false), 1000);
            assertThatThrownBy(() -> reader.read(file, ReadSettings.none(), new Recorder(stopAfter)))
                    .isInstanceOf(CancelledException.class);
            assertThat(openSpillFiles()).isEqualTo(before);
        }
        Capture capture = new CsvCaptureReader(new FastRows.Pace(1 << 12, 1, false), 1000)
                .read(file, ReadSettings.none(), Progress.NONE);
        // values only: the stamps of an even recording are not kept
        assertThat(openSpillFiles()).isEqualTo(before + 1);
        capture.close();
        assertThat(openSpillFiles()).isEqualTo(before);
    }

    // the system lists them as deleted files that this process holds open
    private static long openSpillFiles() throws IOException {
        Path descriptors = Path.of("/proc/self/fd");
        assumeTrue(Files.isDirectory(descriptors), "no /proc here: open temporary files cannot be counted");
        try (Stream<Path> links = Files.list(descriptors)) {
            return links.filter(CsvLargeTest::isSpillFile).count();
        }
    }

    private static boolean isSpillFile(Path link) {
        try {
            String target = Files.readSymbolicLink(link).toString();
            return target.contains("dutywright-") && target.contains(".spill");
        } catch (IOException e) {
            return false;
        }
    }

    @Test
    void theReaderIsFoundAsAService() throws Exception {
        Path file = file(folder, "time,signal1\n0,1\n1,2\n");
        try (Capture capture = Captures.open(List.of(file), ReadSettings.none(), Progress.NONE)) {
            assertThat(capture.sampleCount()).isEqualTo(2);
        }
    }
}
