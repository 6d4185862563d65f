// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.LongPredicate;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;

/**
 * Gives a reader spoiled files. Each is either read, to values that are numbers at instants that never go back, or refused
 * in one line that names the file. No other exception passes, and no file makes the reader allocate more than a fixed
 * amount whatever it declares.
 */
final class HostileRun {
    // pages of the builder, buffers of the readers and the values of some thousand rows; samples are below 16 KiB
    private static final long MOST_ALLOCATED = 96L << 20;
    private static final int BLOCK = 1 << 12;

    private final Path folder;
    private final CaptureReader reader;
    private final List<HostileCorpus.Sample> corpus;
    private int read;
    private int refused;

    HostileRun(Path folder, String id) throws IOException {
        this.folder = folder;
        reader = HostileCorpus.reader(id);
        corpus = HostileCorpus.of(id);
    }

    /** Goes on, each trial with a seed of its own, while a condition holds. */
    void run(long firstSeed, LongPredicate goOn) throws IOException {
        for (long trial = 0; goOn.test(trial); trial++) {
            try {
                trial(new Random(firstSeed + trial));
            } catch (RuntimeException | AssertionError | IOException | StackOverflowError | OutOfMemoryError e) {
                throw new AssertionError(reader.id() + ", seed " + (firstSeed + trial) + ": " + e, e);
            }
        }
    }

    int read() {
        return read;
    }

    int refused() {
        return refused;
    }

    private void trial(Random random) throws IOException {
        HostileCorpus.Sample sample = corpus.get(random.nextInt(corpus.size()));
        byte[] other = any(random, corpus.get(random.nextInt(corpus.size())));
        Spoiler spoiler = new Spoiler(random);
        List<Path> files = new ArrayList<>();
        int spoiled = random.nextInt(sample.files().size());
        for (Map.Entry<String, byte[]> file : sorted(sample)) {
            byte[] bytes = files.size() == spoiled ? spoiler.spoil(file.getValue(), other) : file.getValue();
            files.add(Files.write(folder.resolve(file.getKey()), bytes));
        }
        reader.likelihood(files.get(0), Files.readAllBytes(files.get(0)));
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        try (Capture capture = reader.read(files.get(0), settings(random), Progress.NONE)) {
            checkSound(capture);
            read++;
        } catch (UnreadableException e) {
            assertThat(e).hasMessageStartingWith(folder.toString());
            assertThat(e.getMessage()).doesNotContain("\n", "\r");
            refused++;
        }
        assertThat(threads.getCurrentThreadAllocatedBytes() - before)
                .as("allocated bytes")
                .isLessThan(MOST_ALLOCATED);
        for (Path file : files) {
            Files.delete(file);
        }
    }

    private static byte[] any(Random random, HostileCorpus.Sample sample) {
        List<Map.Entry<String, byte[]>> files = sorted(sample);
        return files.get(random.nextInt(files.size())).getValue();
    }

    private static List<Map.Entry<String, byte[]>> sorted(HostileCorpus.Sample sample) {
        return sample.files().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .toList();
    }

    private static ReadSettings settings(Random random) {
        return random.nextInt(3) == 0 ? ReadSettings.none() : CaptureValues.at(1000);
    }

    private static void checkSound(Capture capture) throws IOException {
        assertThat(capture.sampleCount()).isGreaterThanOrEqualTo(2);
        assertThat(capture.channels()).isNotEmpty();
        double[] block = new double[BLOCK];
        double before = Double.NEGATIVE_INFINITY;
        for (long first = 0; first < capture.sampleCount(); first += BLOCK) {
            int count = (int) Math.min(BLOCK, capture.sampleCount() - first);
            for (int channel = 0; channel < capture.channels().size(); channel++) {
                capture.samples().read(channel, first, block, 0, count);
                for (int i = 0; i < count; i++) {
                    assertThat(Double.isFinite(block[i])).isTrue();
                }
            }
            capture.timeBase().readSeconds(first, block, 0, count);
            for (int i = 0; i < count; i++) {
                // an even base may lay neighbours of two segments on one instant, within the step
                assertThat(block[i])
                        .isGreaterThanOrEqualTo(before - capture.timeBase().stepSeconds());
                before = block[i];
            }
        }
    }
}
