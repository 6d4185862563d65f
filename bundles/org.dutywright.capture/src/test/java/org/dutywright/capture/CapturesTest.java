// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CapturesTest {
    @TempDir
    Path folder;

    /** Gives prepared captures by the text in the file; counts those that are open. */
    private static final class Prepared implements CaptureReader {
        private final Map<String, Capture> captures = new HashMap<>();
        private final List<Path> open = new ArrayList<>();

        @Override
        public String id() {
            return "prepared";
        }

        @Override
        public String title() {
            return "prepared recording";
        }

        @Override
        public int likelihood(byte[] head) {
            return captures.containsKey(new String(head, StandardCharsets.UTF_8)) ? 50 : 0;
        }

        @Override
        public Capture read(Path file, ReadSettings settings, Progress progress) throws IOException {
            assertThat(settings.channels()).as("picks are made on the whole").isEmpty();
            Capture prepared = captures.get(Files.readString(file));
            open.add(file);
            Samples samples = new Samples() {
                @Override
                public int channelCount() {
                    return prepared.samples().channelCount();
                }

                @Override
                public long sampleCount() {
                    return prepared.sampleCount();
                }

                @Override
                public void read(int channel, long firstSample, double[] target, int offset, int count)
                        throws IOException {
                    prepared.samples().read(channel, firstSample, target, offset, count);
                }

                @Override
                public void close() {
                    open.remove(file);
                }
            };
            Source source = new Source(file, "0".repeat(64));
            return new Capture(
                    List.of(source), prepared.channels(), prepared.timeBase(), samples, Map.of("delimiter", "comma"));
        }
    }

    private final Prepared reader = new Prepared();

    private Path file(String name, Capture capture) throws IOException {
        reader.captures.put(name, capture);
        return Files.writeString(folder.resolve(name), name);
    }

    private Capture open(ReadSettings settings, Path... files) throws UnreadableException, IOException {
        return Captures.open(List.of(files), settings, List.of(reader), Progress.NONE);
    }

    private static Capture ramp(String name, double startSeconds, double sampleRateHz, int count) {
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = i;
        }
        return Captures.ofArrays(List.of(name), List.of("V"), startSeconds, sampleRateHz, values);
    }

    private static double[] valuesOf(Capture capture, int channel) throws IOException {
        double[] values = new double[(int) capture.sampleCount()];
        capture.samples().read(channel, 0, values, 0, values.length);
        return values;
    }

    @Test
    void filesOfOneRecordingBecomeColumnsOfOneCapture() throws Exception {
        Path first = file("first.csv", ramp("signal", 0, 1000, 5));
        // starts half a step later, and is one row longer
        Path second = file("second.csv", ramp("signal", 0.0005, 1000, 6));
        try (Capture capture = open(ReadSettings.none(), first, second)) {
            assertThat(capture.channels()).containsExactly(new Channel("signal", "V"), new Channel("signal_2", "V"));
            assertThat(capture.sampleCount()).isEqualTo(5);
            assertThat(valuesOf(capture, 1)).containsExactly(0, 1, 2, 3, 4);
            assertThat(capture.timeBase().secondsAt(0)).isZero();
            assertThat(capture.sources()).extracting(Source::path).containsExactly(first, second);
            assertThat(capture.guessed())
                    .containsEntry(first + ": delimiter", "comma")
                    .containsEntry(second + ": rows after the end of the shortest file", "1, left out");
            assertThat(reader.open).hasSize(2);
        }
        assertThat(reader.open).isEmpty();
    }

    @Test
    void picksAndScalesSpeakOfAllFilesTogether() throws Exception {
        Path first = file("first.csv", ramp("signal1", 0, 1000, 3));
        Path second = file("second.csv", ramp("signal2", 0, 1000, 3));
        ReadSettings settings = new ReadSettings(
                OptionalDouble.empty(),
                List.of(new ReadSettings.Pick("signal2 (V)", "pedal"), new ReadSettings.Pick("#1", "switch")),
                Map.of("pedal", 10.0));
        try (Capture capture = open(settings, first, second)) {
            assertThat(capture.channels()).extracting(Channel::name).containsExactly("pedal", "switch");
            assertThat(valuesOf(capture, 0)).containsExactly(0, 10, 20);
            assertThat(valuesOf(capture, 1)).containsExactly(0, 1, 2);
        }
        ReadSettings unknown = new ReadSettings(OptionalDouble.empty(), List.of(), Map.of("brake", 2.0));
        assertThatThrownBy(() -> open(unknown, first, second))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("the channels are signal1, signal2");
        assertThat(reader.open).isEmpty();
    }

    @Test
    void filesThatDoNotBelongTogetherAreRefusedByName() throws Exception {
        Path first = file("first.csv", ramp("a", 0, 1000, 2000));
        List<Path> others = List.of(
                file("later.csv", ramp("b", 0.0006, 1000, 2000)),
                file("faster.csv", ramp("c", 0, 1001, 2000)),
                file("gap.csv", withGap()),
                file("uneven.csv", uneven()));
        for (Path other : others) {
            assertThatThrownBy(() -> open(ReadSettings.none(), first, other))
                    .isInstanceOf(UnreadableException.class)
                    .hasMessageStartingWith(other + ": is no part of the recording in " + first);
            assertThat(reader.open).isEmpty();
        }
    }

    private static Capture withGap() {
        List<Segment> segments = List.of(new Segment(0, 1000, 0), new Segment(1000, 1000, 1.5));
        return Captures.ofArrays(List.of("d"), List.of("V"), 1000, segments, new double[2000]);
    }

    private static Capture uneven() {
        double[] seconds = new double[2000];
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = i * 1e-3 + (i == 1700 ? 6e-4 : 0);
        }
        return Captures.ofStampedArrays(List.of("e"), List.of("V"), seconds, new double[2000]);
    }

    @Test
    void ratesThatDriftApartLessThanHalfASampleAreOneRecording() throws Exception {
        Path first = file("first.csv", ramp("a", 0, 1000, 1000));
        // 999 steps at 1000.4 Hz end 0.4 steps early
        Path second = file("second.csv", ramp("b", 0, 1000.4, 1000));
        try (Capture capture = open(ReadSettings.none(), first, second)) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(1000);
        }
    }

    @Test
    void filesThatNoReaderKnowsAreRefused() throws Exception {
        Path unknown = Files.writeString(folder.resolve("unknown.bin"), "?");
        assertThatThrownBy(() -> open(ReadSettings.none(), unknown))
                .isInstanceOf(UnreadableException.class)
                .hasMessage(unknown + ": is in no format that is known here (prepared recording);"
                        + " export the recording as CSV");
        Path empty = Files.createFile(folder.resolve("empty.csv"));
        assertThatThrownBy(() -> open(ReadSettings.none(), empty)).hasMessageContaining("is empty");
        assertThatThrownBy(() -> open(ReadSettings.none(), folder)).hasMessageContaining("is a folder");
        Path first = file("first.csv", ramp("a", 0, 1000, 5));
        assertThatThrownBy(() -> open(ReadSettings.none(), first, folder.resolve("missing.csv")))
                .isInstanceOf(NoSuchFileException.class);
        assertThat(reader.open).isEmpty();
    }

    @Test
    void aPartHoldsTheSamplesFromOneInstantToTheOther() throws Exception {
        List<Segment> segments = List.of(new Segment(0, 4, -0.002), new Segment(4, 4, 5));
        double[] values = {0, 1, 2, 3, 4, 5, 6, 7};
        Capture whole = Captures.ofArrays(List.of("a"), List.of("V"), 1000, segments, values);
        Capture part = Captures.between(whole, OptionalDouble.of(0), OptionalDouble.of(5.001));
        assertThat(valuesOf(part, 0)).containsExactly(2, 3, 4, 5);
        assertThat(part.timeBase().segments()).containsExactly(new Segment(0, 2, 0), new Segment(2, 2, 5));
        Capture end = Captures.between(whole, OptionalDouble.of(5.0005), OptionalDouble.empty());
        assertThat(valuesOf(end, 0)).containsExactly(5, 6, 7);
        assertThat(Captures.between(whole, OptionalDouble.empty(), OptionalDouble.empty()))
                .isSameAs(whole);
        assertThatThrownBy(() -> Captures.between(whole, OptionalDouble.of(1), OptionalDouble.of(2)))
                .isInstanceOf(UnreadableException.class)
                .hasMessage("capture: no sample lies from 1.0 s to 2.0 s; the recording runs from -0.002 s to 5.003 s");
    }

    @Test
    void aPartOfAnUnevenRecordingKeepsItsStamps() throws Exception {
        double[] seconds = {0, 0.1, 0.5, 0.6, 2};
        double[] values = {0, 1, 2, 3, 4};
        Capture whole = Captures.ofStampedArrays(List.of("a"), List.of("V"), seconds, values);
        Capture part = Captures.between(whole, OptionalDouble.of(0.1), OptionalDouble.of(0.6));
        assertThat(valuesOf(part, 0)).containsExactly(1, 2, 3);
        assertThat(part.timeBase().segments()).containsExactly(new Segment(0, 3, 0.1));
        double[] read = new double[3];
        part.timeBase().readSeconds(0, read, 0, 3);
        assertThat(read).containsExactly(0.1, 0.5, 0.6);
    }
}
