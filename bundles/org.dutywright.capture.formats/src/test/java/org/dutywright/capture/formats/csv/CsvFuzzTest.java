// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.SampleBlocks;
import org.dutywright.capture.UnreadableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Spoiled files give either a sound recording or an error that says where; seeded, so that a failure comes back. */
class CsvFuzzTest {
    private static final byte[] SPICE =
            "0123456789.,;\t|\" '#-+eE\r\n\0()[]/VsmNa\u00b5\u00ff".getBytes(StandardCharsets.UTF_8);

    @TempDir
    Path folder;

    @Test
    void spoiledFilesAreReadSoundlyOrRefusedInOneLine() throws IOException {
        Random random = new Random(20261125);
        int read = 0;
        int refused = 0;
        for (int trial = 0; trial < 800; trial++) {
            Path file = Files.write(folder.resolve("spoiled.csv"), spoiled(random));
            try (Capture capture = new CsvCaptureReader(new FastRows.Pace(256, 1, false), CaptureBuilder.HEAP_VALUES)
                    .read(file, settings(random), Progress.NONE)) {
                assertIsSound(capture);
                read++;
            } catch (UnreadableException e) {
                assertThat(e).hasMessageStartingWith(file.toString());
                assertThat(e.getMessage().lines()).hasSize(1);
                refused++;
            }
        }
        assertThat(read).isGreaterThan(100);
        assertThat(refused).isGreaterThan(100);
    }

    private static ReadSettings settings(Random random) {
        return random.nextBoolean() ? ReadSettings.none() : CsvText.AT_1_KHZ;
    }

    private static byte[] spoiled(Random random) {
        char delimiter = ",;\t|".charAt(random.nextInt(4));
        StringBuilder text = new StringBuilder(random.nextBoolean() ? "made: by hand\n" : "");
        text.append("time (ms)" + delimiter + "signal1" + delimiter + "\"two\" (mV)\n");
        int rows = 1 + random.nextInt(40);
        for (int i = 0; i < rows; i++) {
            text.append(i * 0.25)
                    .append(delimiter)
                    .append(random.nextInt(100))
                    .append(delimiter)
                    .append("5e-1\n");
        }
        byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
        for (int i = random.nextInt(6); i > 0; i--) {
            bytes[random.nextInt(bytes.length)] = SPICE[random.nextInt(SPICE.length)];
        }
        return random.nextInt(4) == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length)) : bytes;
    }

    private static void assertIsSound(Capture capture) throws IOException {
        assertThat(capture.sampleCount()).isGreaterThanOrEqualTo(2);
        assertThat(capture.channels()).isNotEmpty();
        for (int channel = 0; channel < capture.channels().size(); channel++) {
            double before = Double.NEGATIVE_INFINITY;
            long count = 0;
            SampleBlocks blocks = SampleBlocks.of(capture, channel, 16);
            while (blocks.next()) {
                for (int i = 0; i < blocks.count(); i++) {
                    assertThat(blocks.values()[i]).isFinite();
                    // an even base may lay neighbours of two segments on one instant, within its resolution
                    assertThat(blocks.secondsAt(i)).isGreaterThan(before - 1e-3);
                    before = blocks.secondsAt(i);
                }
                count += blocks.count();
            }
            assertThat(count).isEqualTo(capture.sampleCount());
        }
    }
}
