// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Channel;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Segment;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.csv.CsvCaptureReader;
import org.dutywright.capture.formats.numpy.NumpyCaptureReader;
import org.dutywright.capture.formats.wav.WavCaptureReader;
import org.dutywright.capture.store.ArrowCaptureReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class ExportTest {
    private static final List<CaptureReader> READERS =
            List.of(new CsvCaptureReader(), new ArrowCaptureReader(), new NumpyCaptureReader(), new WavCaptureReader());
    private static final List<String> NAMES = List.of("signal1", "pedal, \"upper\"");
    private static final List<String> UNITS = List.of("V", "%");

    @TempDir
    private Path folder;

    @Test
    void textReadsBackAsTheSameDoubles() throws Exception {
        Random random = new Random(1);
        double[] one = random.doubles(5000, -20, 20).toArray();
        double[] two = random.doubles(5000, 0, 1e-7).toArray();
        List<Segment> segments = List.of(new Segment(0, 2000, -0.0123), new Segment(2000, 3000, 5));
        Capture before = Captures.ofArrays(NAMES, UNITS, 44_100, segments, one, two);

        try (Capture after = reopened(before, "out.csv")) {
            assertThat(after.channels()).isEqualTo(before.channels());
            assertThat(after.timeBase().sampleRateHz()).isEqualTo(OptionalDouble.of(44_100));
            assertThat(after.timeBase().segments()).isEqualTo(segments);
            assertThat(values(after, 0)).isEqualTo(one);
            assertThat(values(after, 1)).isEqualTo(two);
        }
    }

    @Test
    void textKeepsUnevenStampsToTheLastDigit() throws Exception {
        double[] seconds = new Random(2).doubles(500, -1, 1).sorted().toArray();
        double[] values = new Random(3).doubles(500).toArray();

        try (Capture after =
                reopened(Captures.ofStampedArrays(List.of("signal1"), List.of("V"), seconds, values), "out.csv")) {
            double[] back = new double[500];
            after.timeBase().readSeconds(0, back, 0, 500);
            assertThat(after.timeBase().sampleRateHz()).isEmpty();
            assertThat(back).isEqualTo(seconds);
            assertThat(values(after, 0)).isEqualTo(values);
        }
    }

    @Test
    void theStoreIsTheOneOfTheCaptureBundle() throws Exception {
        double[] values = {1, 2, 3};
        try (Capture after =
                reopened(Captures.ofArrays(List.of("signal1"), List.of("A"), 0, 10, values), "out.ARROW")) {
            assertThat(after.channels().get(0).unit()).isEqualTo("A");
            assertThat(values(after, 0)).isEqualTo(values);
        }
    }

    @Test
    void aWaveIsWithinHalfACodeOfTheValueWithItsScaleInTheComment() throws Exception {
        double[] one = new Random(4).doubles(1000, -11.97, 12).toArray();
        one[7] = 12;
        double[] two = new Random(5).doubles(1000, 0, 95).toArray();
        two[3] = 95;
        Path file = folder.resolve("out.wav");
        List<String> remarks = write(Captures.ofArrays(List.of("signal1", "travel"), UNITS, 0, 8000, one, two), file);

        // 12 V and 95 % times 32768/32767, rounded up to three digits
        String scale = "signal1: full scale 12.1 V";
        assertThat(remarks).containsExactly("16 bits a sample; " + scale + ", travel: full scale 95.1 %");
        byte[] bytes = Files.readAllBytes(file);
        assertThat(new String(bytes, StandardCharsets.ISO_8859_1)).contains(scale + "\ntravel: full scale 95.1 %\0");
        // the JDK's own reader of the format
        try (AudioInputStream sound = AudioSystem.getAudioInputStream(new ByteArrayInputStream(bytes))) {
            AudioFormat format = sound.getFormat();
            assertThat(format.getSampleRate()).isEqualTo(8000);
            assertThat(format.getChannels()).isEqualTo(2);
            assertThat(format.getSampleSizeInBits()).isEqualTo(16);
            assertThat(sound.getFrameLength()).isEqualTo(1000);
            ByteBuffer codes = ByteBuffer.wrap(sound.readAllBytes()).order(ByteOrder.LITTLE_ENDIAN);
            for (int i = 0; i < 1000; i++) {
                assertThat(codes.getShort(4 * i) * 12.1 / 32768).isCloseTo(one[i], within(12.1 / 65536 + 1e-12));
                assertThat(codes.getShort(4 * i + 2) * 95.1 / 32768).isCloseTo(two[i], within(95.1 / 65536 + 1e-12));
            }
        }
    }

    @Test
    void aWaveOfMoreThanFourGigabytesSaysItsSizesIn64Bits() {
        long frames = 3L << 30;
        ByteBuffer header =
                ByteBuffer.wrap(WaveHeader.of(1, 1_000_000, frames, "x")).order(ByteOrder.LITTLE_ENDIAN);

        // EBU Tech 3306: RF64, size -1, WAVE, ds64, size 28, then RIFF size, data size, sample count and an empty table
        assertThat(new String(header.array(), 0, 4, StandardCharsets.US_ASCII)).isEqualTo("RF64");
        assertThat(header.getInt(4)).isEqualTo(-1);
        assertThat(header.getLong(20)).isEqualTo(header.capacity() - 8 + 2 * frames);
        assertThat(header.getLong(28)).isEqualTo(2 * frames);
        assertThat(header.getLong(36)).isEqualTo(frames);
        assertThat(header.getInt(header.capacity() - 4)).isEqualTo(-1);
    }

    @Test
    void gapsUnevenStampsAndBrokenRatesDoNotFitIntoAWave() {
        List<String> name = List.of("signal1");
        List<String> volt = List.of("V");
        double[] three = {1, 2, 3};
        List<Segment> gap = List.of(new Segment(0, 1, 0), new Segment(1, 2, 9));
        Map<String, Capture> refused = Map.of(
                "it has gaps, the first after 1 samples", Captures.ofArrays(name, volt, 10, gap, three),
                "its samples are not evenly spaced",
                        Captures.ofStampedArrays(name, volt, new double[] {0, 1, 7}, three),
                "its sample rate of 10.5 Hz is no whole number", Captures.ofArrays(name, volt, 0, 10.5, three));

        refused.forEach((why, capture) -> assertThatThrownBy(() -> write(capture, folder.resolve("out.wav")))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining(why)
                .hasMessageContaining("write .arrow or .csv"));
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void anArrayHasTimeAndChannelsAsFields() throws Exception {
        Path file = folder.resolve("out.npy");
        write(
                Captures.ofArrays(List.of("signal1", "it's"), UNITS, 0.5, 4, new double[] {1, 2}, new double[] {3, 4}),
                file);

        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
        int header = bytes.getShort(8) + 10;
        assertThat(header % 64).isZero();
        assertThat(new String(bytes.array(), 0, header, StandardCharsets.ISO_8859_1).strip())
                .isEqualTo(
                        "\u0093NUMPY\u0001\u0000v\u0000{'descr': [('time_s', '<f8'), ('signal1', '<f8'), ('it\\'s (%)',"
                                + " '<f8')], 'fortran_order': False, 'shape': (2,), }");
        double[] numbers = new double[6];
        bytes.position(header)
                .slice()
                .order(ByteOrder.LITTLE_ENDIAN)
                .asDoubleBuffer()
                .get(numbers);
        assertThat(numbers).containsExactly(0.5, 1, 3, 0.75, 2, 4);
        assertThat(bytes.capacity()).isEqualTo(header + 48);
    }

    @ParameterizedTest
    @ValueSource(strings = {"out.arrow", "out.csv", "out.npy"})
    void everyUnitAndEveryDigitComesBack(String name) throws Exception {
        Random random = new Random(6);
        List<String> names = List.of("signal1", "pump current", "bit", "d\u00e9bit \u2126");
        List<String> units = List.of("V", "A", "", "\u03a9");
        double[][] values = new double[4][];
        for (int i = 0; i < values.length; i++) {
            values[i] = random.doubles(3000, -5, 20).toArray();
        }
        List<Segment> segments = List.of(new Segment(0, 1000, -0.25), new Segment(1000, 2000, 5));

        try (Capture after = reopened(Captures.ofArrays(names, units, 44_100, segments, values), name)) {
            assertThat(after.channels().stream().map(Channel::name)).containsExactlyElementsOf(names);
            assertThat(after.channels().stream().map(Channel::unit)).containsExactlyElementsOf(units);
            assertThat(after.timeBase().sampleRateHz()).hasValue(44_100);
            assertThat(after.timeBase().segments()).isEqualTo(segments);
            for (int i = 0; i < values.length; i++) {
                // a store holds floats of 32 bits: half of 2^-23 of the value
                double share = name.endsWith(".arrow") ? 0x1p-24 : 0;
                double[] back = values(after, i);
                for (int at = 0; at < back.length; at++) {
                    assertThat(back[at]).isCloseTo(values[i][at], within(share * Math.abs(values[i][at])));
                }
            }
        }
    }

    @Test
    void aWaveComesBackInItsUnitsWithinHalfACode() throws Exception {
        double[] one = new Random(7).doubles(500, -12, 12).toArray();
        double[] two = new Random(8).doubles(500, 0, 0.02).toArray();
        List<String> names = List.of("pedal: upper", "current");
        // a rate that differs from a whole number by less than the 50 ppm that are taken
        Capture before = Captures.ofArrays(names, List.of("V", "A"), -0.25, 48_000.5, one, two);

        try (Capture after = reopened(before, "out.wav")) {
            assertThat(after.channels()).isEqualTo(before.channels());
            assertThat(after.timeBase().sampleRateHz()).hasValue(48_000.5);
            assertThat(after.timeBase().secondsAt(0)).isEqualTo(-0.25);
            // full scale is the largest magnitude rounded up to three digits: half a code is 1.01 of it / 65536 at most
            for (int i = 0; i < one.length; i++) {
                assertThat(values(after, 0)[i]).isCloseTo(one[i], within(12 * 1.01 / 65_536));
                assertThat(values(after, 1)[i]).isCloseTo(two[i], within(0.02 * 1.01 / 65_536));
            }
        }
        ReadSettings said = ReadSettings.none().withFullScale(OptionalDouble.of(1));
        try (Capture given = Captures.open(List.of(folder.resolve("out.wav")), said, READERS, Progress.NONE)) {
            assertThat(given.channels().stream().map(Channel::unit)).containsExactly("V", "V");
            assertThat(values(given, 0)[0]).isBetween(-1.0, 1.0);
        }
    }

    private Capture reopened(Capture before, String name) throws UnreadableException, IOException {
        Path file = folder.resolve(name);
        write(before, file);
        return Captures.open(List.of(file), ReadSettings.none(), READERS, Progress.NONE);
    }

    private static List<String> write(Capture capture, Path file) throws UnreadableException, IOException {
        CaptureWriter.Prepared prepared =
                CaptureWriters.of(file).orElseThrow().prepare(capture, Map.of(), Progress.NONE);
        OutputFile.write(file, prepared.content());
        return prepared.remarks();
    }

    private static double[] values(Capture capture, int channel) throws IOException {
        double[] values = new double[Math.toIntExact(capture.sampleCount())];
        capture.samples().read(channel, 0, values, 0, values.length);
        return values;
    }
}
