// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.UnreadableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that are cut off, damaged or made to harm are one clear line; nothing is allocated by what they state. */
final class HostileArrowTest {
    @TempDir
    private Path folder;

    @Test
    void anyByteMayBeAnyOther() throws Exception {
        Random random = new Random(11);
        List<byte[]> corpus = Stores.corpus(folder);
        Path file = folder.resolve("mutant.arrow");
        int refused = 0;
        for (int round = 0; round < 1000; round++) {
            byte[] bytes = corpus.get(round % corpus.size()).clone();
            // most of a small file is metadata; numbers that are only larger or smaller are no damage
            int changes = 1 + random.nextInt(4);
            for (int i = 0; i < changes; i++) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            refused += outcome(file, bytes);
        }
        assertThat(refused).isBetween(100, 999);
    }

    @Test
    void fourBytesOfTheFooterMayBeAnyNumber() throws Exception {
        List<byte[]> corpus = Stores.corpus(folder);
        Path file = folder.resolve("mutant.arrow");
        int refused = 0;
        for (byte[] sound : corpus) {
            int footer = ByteBuffer.wrap(sound).order(ByteOrder.LITTLE_ENDIAN).getInt(sound.length - 10);
            for (int at = sound.length - 10 - footer; at <= sound.length - 10; at += 8) {
                for (int number : new int[] {-1, 1, Integer.MAX_VALUE}) {
                    byte[] bytes = sound.clone();
                    ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(at, number);
                    refused += outcome(file, bytes);
                }
            }
        }
        assertThat(refused).isGreaterThan(125);
    }

    @Test
    void aFileMayEndAnywhere() throws Exception {
        Path file = folder.resolve("mutant.arrow");
        byte[] sound = Stores.corpus(folder).get(0);
        for (int length = ArrowFileWriter.MAGIC.length; length < sound.length; length += 7) {
            assertThat(outcome(file, Arrays.copyOf(sound, length))).isEqualTo(1);
        }
    }

    @Test
    void aCutOffFileIsToldWithItsEnd() throws Exception {
        Path file = folder.resolve("cut.arrow");
        Files.write(file, Arrays.copyOf(Stores.corpus(folder).get(0), 700));

        assertThatThrownBy(() -> Stores.open(file))
                .isInstanceOf(UnreadableException.class)
                .hasMessage(file + ", byte 700: ends without the end of an Arrow file; copy or write it again; it is"
                        + " cut off, or a stream without footer");
    }

    @ParameterizedTest
    @ValueSource(ints = {Integer.MAX_VALUE, -5, 1 << 28})
    void aFooterLargerThanTheFileIsRefused(int length) throws Exception {
        byte[] bytes = Stores.corpus(folder).get(0);
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(bytes.length - 10, length);
        Path file = folder.resolve("footer.arrow");
        Files.write(file, bytes);

        assertThatThrownBy(() -> Stores.open(file))
                .isInstanceOf(UnreadableException.class)
                .hasMessageStartingWith(
                        file + ", byte " + (bytes.length - 10) + ": says that its footer has " + length);
    }

    @Test
    void theSameRowsOverAndOverAreRefused() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<ArrowField> fields = List.of(ArrowField.of("signal1", ArrowField.Type.FLOAT64));
        ArrowFileWriter writer = ArrowFileWriter.begin(out, fields, Map.of());
        long start = out.size();
        writer.batch(1024, List.of(ArrowFileWriter.Buffer.of(new byte[8192])));
        long body = 8192;
        int meta = (int) (out.size() - start - body);
        ArrowMessages.Place place = new ArrowMessages.Place(start, meta, body);
        ByteBuffer footer = ArrowMessages.footer(fields, Map.of(), Collections.nCopies(10_000, place));
        out.write(footer.array(), footer.arrayOffset() + footer.position(), footer.remaining());
        out.write(ByteBuffer.allocate(4)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putInt(footer.remaining())
                .array());
        out.write(ArrowFileWriter.MAGIC);
        Path file = folder.resolve("bomb.arrow");
        Files.write(file, out.toByteArray());

        assertThatThrownBy(() -> Stores.open(file))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("says that batch 2 lies at byte " + start);
    }

    @Test
    void aNumberThatIsNoneIsToldWithItsByte() throws Exception {
        double[] values = new double[100];
        Arrays.fill(values, 0.1);
        values[40] = 3;
        Path file = Stores.write(Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 100, values), file());
        byte[] bytes = Files.readAllBytes(file);
        ByteBuffer buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        int at = 0;
        while (buffer.getFloat(at) != 3f) {
            at += 4;
        }
        buffer.putFloat(at, Float.NaN);
        Files.write(file, bytes);

        assertThatThrownBy(() -> Stores.open(file))
                .isInstanceOf(UnreadableException.class)
                .hasMessage(file + ", byte " + at + ": holds no number; convert the source again; another program"
                        + " has changed this store");
    }

    private Path file() {
        return folder.resolve("capture.arrow");
    }

    /** Opens a file and reads all of it; 1 if it was refused, and anything but that or success fails. */
    private static int outcome(Path file, byte[] bytes) throws IOException {
        Files.write(file, bytes);
        try (Capture capture = Stores.open(file)) {
            assertThat(capture.sampleCount()).isBetween(1L, 100_000L);
            for (int i = 0; i < capture.channels().size(); i++) {
                Stores.values(capture, i);
            }
            return 0;
        } catch (UnreadableException e) {
            assertThat(e.getMessage()).startsWith(file.toString()).doesNotContain("\n");
            return 1;
        }
    }
}
