// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Random;
import org.dutywright.capture.BlockExtremes;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Channel;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.EvenTimeBase;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Samples;
import org.dutywright.capture.Segment;
import org.dutywright.capture.Source;
import org.dutywright.capture.StatedRate;
import org.dutywright.capture.UnreadableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A store gives back what went in: values that single precision holds exactly are compared for equality. */
final class StoreRoundTripTest {
    private static final List<String> NAMES = List.of("signal1", "signal2", "supply");
    private static final List<String> UNITS = List.of("V", "A", "%");

    @TempDir
    private Path folder;

    @Test
    void evenSamplesOfSeveralChannelsComeBackWithNamesUnitsAndRate() throws Exception {
        Capture before =
                Captures.ofArrays(NAMES, UNITS, -0.0125, 1e5, eighths(1, 5000), eighths(2, 5000), eighths(3, 5000));

        try (Capture after = Stores.open(Stores.write(before, file()))) {
            assertThat(after.channels()).isEqualTo(before.channels());
            assertThat(after.timeBase().sampleRateHz()).isEqualTo(OptionalDouble.of(1e5));
            assertThat(after.timeBase().segments()).isEqualTo(before.timeBase().segments());
            assertSame(after, before);
        }
    }

    @Test
    void samplesOfSeveralBatchesComeBack() throws Exception {
        double[] values = eighths(4, 2 * CaptureStore.BATCH_SAMPLES + 17);
        Capture before = Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 1e6, values);

        try (Capture after = Stores.open(Stores.write(before, file()))) {
            assertSame(after, before);
            double[] across = new double[10];
            after.samples().read(0, CaptureStore.BATCH_SAMPLES - 5, across, 0, 10);
            assertThat(across)
                    .containsExactly(
                            Arrays.copyOfRange(values, CaptureStore.BATCH_SAMPLES - 5, CaptureStore.BATCH_SAMPLES + 5));
        }
    }

    @Test
    void gapsAreKept() throws Exception {
        List<Segment> segments = List.of(new Segment(0, 3, -1.5), new Segment(3, 1, 0.1), new Segment(4, 6, 1e6 / 3));
        Capture before = Captures.ofArrays(List.of("signal1"), List.of("V"), 44_100, segments, eighths(5, 10));

        try (Capture after = Stores.open(Stores.write(before, file()))) {
            assertThat(after.timeBase().segments()).isEqualTo(segments);
            assertSame(after, before);
        }
    }

    @Test
    void unevenStampsAreKeptToTheLastBit() throws Exception {
        double[] seconds = new Random(6).doubles(4000, -1, 1).sorted().toArray();
        Capture before = Captures.ofStampedArrays(NAMES.subList(0, 1), UNITS.subList(0, 1), seconds, eighths(7, 4000));

        try (Capture after = Stores.open(Stores.write(before, file()))) {
            assertThat(after.timeBase().sampleRateHz()).isEmpty();
            assertThat(after.timeBase().stepSeconds())
                    .isEqualTo(before.timeBase().stepSeconds());
            assertThat(after.timeBase().segments()).isEqualTo(before.timeBase().segments());
            assertSame(after, before);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 1e5, 44_100, 1 / 3e-6, 1 / 7e-5, 0.1, 123_456.789012345, 1e-9, 2.5e9, Math.PI})
    void aSampleRateComesBackToTheLastBit(double rate) throws Exception {
        Capture before = Captures.ofArrays(List.of("signal1"), List.of("V"), 0.1 + 0.2, rate, eighths(8, 10));

        try (Capture after = Stores.open(Stores.write(before, file()))) {
            assertThat(after.timeBase().sampleRateHz()).isEqualTo(OptionalDouble.of(rate));
            assertSame(after, before);
        }
    }

    @Test
    void oneSampleComesBack() throws Exception {
        Capture before = Captures.ofArrays(List.of("signal1"), List.of("V"), 5, 1000, new double[] {2.5});

        try (Capture after = Stores.open(Stores.write(before, file()))) {
            assertSame(after, before);
        }
    }

    @Test
    void aStoreWithoutSamplesIsWrittenAndSaidToBeEmpty() throws Exception {
        Capture empty = new Capture(
                List.of(),
                List.of(new Channel("signal1", "V")),
                EvenTimeBase.of(1000, List.of()),
                new NoSamples(),
                Map.of());

        Path file = Stores.write(empty, file());

        assertThatThrownBy(() -> Stores.open(file))
                .isInstanceOf(UnreadableException.class)
                .hasMessage(file + ": holds no sample; record or convert it again");
    }

    @Test
    void aChoiceOfChannelsAndAScaleWorkOnAStore() throws Exception {
        Capture before = Captures.ofArrays(NAMES, UNITS, 0, 1000, eighths(1, 9), eighths(2, 9), eighths(3, 9));
        ReadSettings settings = new ReadSettings(
                OptionalDouble.empty(), List.of(new ReadSettings.Pick("#2", "other")), Map.of("other", 10.0));

        try (Capture after = Stores.open(Stores.write(before, file()), settings)) {
            assertThat(after.channels()).containsExactly(new Channel("other", "A"));
            double[] expected = Stores.values(before, 1);
            for (int i = 0; i < expected.length; i++) {
                expected[i] *= 10;
            }
            assertThat(Stores.values(after, 0)).isEqualTo(expected);
        }
    }

    @Test
    void countsStayCounts() throws Exception {
        CountScale scale = new CountScale(0.0005, -1.25);
        int[] counts =
                new Random(9).ints(3000, Short.MIN_VALUE, Short.MAX_VALUE + 1).toArray();
        try (CaptureBuilder builder = CaptureBuilder.even(List.of(new Channel("signal1", "V")), 0, 1e4)) {
            builder.counts(0, scale);
            for (int count : counts) {
                builder.append(new double[] {scale.valueOf(count)});
            }
            try (Capture before = builder.finish(new Source(Path.of("a.wav"), Stores.SHA256), Map.of(), Progress.NONE);
                    Capture after = Stores.open(Stores.write(before, file()))) {
                assertThat(after.channels()).containsExactly(new Channel("signal1", "V"));
                assertThat(after.samples().counts(0)).contains(scale);
                assertSame(after, before);
                // two bytes a sample, and little beside them
                assertThat(Files.size(file())).isBetween(6000L, 9000L);
            }
        }
    }

    @Test
    void whatIsSaidToBeCountsAndIsNotStaysFloating() throws Exception {
        try (CaptureBuilder builder = CaptureBuilder.even(List.of(new Channel("signal1", "V")), 0, 1e4)) {
            builder.counts(0, new CountScale(1, 0));
            builder.append(new double[] {1});
            builder.append(new double[] {1.5});
            try (Capture before = builder.finish(new Source(Path.of("a.wav"), Stores.SHA256), Map.of(), Progress.NONE);
                    Capture after = Stores.open(Stores.write(before, file()))) {
                assertThat(after.samples().counts(0)).isEmpty();
                assertSame(after, before);
            }
        }
    }

    @Test
    void theSourceAndWhatWasGuessedStayKnown() throws Exception {
        Capture arrays = Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 1000, eighths(1, 9));
        Capture before = new Capture(
                List.of(new Source(Path.of("yard.csv"), Stores.SHA256)),
                arrays.channels(),
                arrays.timeBase(),
                arrays.samples(),
                Map.of("delimiter", "semicolon"),
                List.of(new StatedRate("line 3 of yard.csv", 1234.5, 0.001)));

        Path twice = folder.resolve("twice.arrow");
        try (Capture once = Stores.open(Stores.write(before, file()));
                Capture after = Stores.open(Stores.write(once, twice))) {
            assertThat(once.guessed())
                    .containsEntry("import: source", Stores.SHA256 + " yard.csv")
                    .containsEntry("import: delimiter", "semicolon");
            assertThat(after.guessed()).isEqualTo(once.guessed());
            assertThat(after.statedRates()).isEqualTo(before.statedRates());
            assertThat(after.sources()).extracting(Source::path).containsExactly(twice);
        }
    }

    @Test
    void cancellingLeavesNothingBehind() throws Exception {
        Capture capture = Captures.ofArrays(List.of("signal1"), List.of("V"), 0, 1000, eighths(1, 100));
        Progress cancelled = new Progress() {
            @Override
            public void begin(String task, long totalWork) {}

            @Override
            public void worked(long work) {}

            @Override
            public boolean isCancelled() {
                return true;
            }
        };

        assertThatThrownBy(() ->
                        OutputFile.write(file(), stream -> CaptureStore.write(capture, Map.of(), stream, cancelled)))
                .isInstanceOf(CancelledException.class);
        assertThat(folder).isEmptyDirectory();
    }

    private Path file() {
        return folder.resolve("capture.arrow");
    }

    /** Values that single precision holds exactly, and in which an eighth is the smallest step. */
    private static double[] eighths(long seed, int count) {
        return new Random(seed).ints(count, -400, 400).mapToDouble(i -> i / 8.0).toArray();
    }

    private static void assertSame(Capture after, Capture before) throws IOException {
        assertThat(after.sampleCount()).isEqualTo(before.sampleCount());
        assertThat(Stores.seconds(after)).isEqualTo(Stores.seconds(before));
        for (int i = 0; i < before.channels().size(); i++) {
            assertThat(Stores.values(after, i)).isEqualTo(Stores.values(before, i));
            assertSummedUp(after.samples().extremes(i).orElseThrow(), Stores.values(after, i));
        }
    }

    /** The oracle searches every sample. */
    private static void assertSummedUp(BlockExtremes extremes, double[] values) {
        int size = (int) extremes.samplesPerBlock();
        assertThat(extremes.count()).isEqualTo(Math.ceilDiv(values.length, size));
        for (int block = 0; block < extremes.count(); block++) {
            int end = Math.min(values.length, (block + 1) * size);
            assertThat(extremes.min(block))
                    .isEqualTo(Arrays.stream(values, block * size, end).min().orElseThrow());
            assertThat(extremes.max(block))
                    .isEqualTo(Arrays.stream(values, block * size, end).max().orElseThrow());
        }
    }

    /** One channel without a sample. */
    private static final class NoSamples implements Samples {
        @Override
        public int channelCount() {
            return 1;
        }

        @Override
        public long sampleCount() {
            return 0;
        }

        @Override
        public void read(int channel, long firstSample, double[] target, int offset, int count) {
            Objects.checkFromIndexSize(firstSample, count, 0L);
        }

        @Override
        public void close() {}
    }
}
