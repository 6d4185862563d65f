// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.numpy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.TimeSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.dutywright.units.ScaledUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Against files that NumPy 2.4.6 wrote (releng/reference/formats/make_numpy.py): row i of channel k is (i - 2)(k + 1)/4,
 * without the 4 in whole numbers and without the sign in those that have none.
 */
public class NumpyReaderTest {
    private static final double[] FIRST = {-0.5, -0.25, 0, 0.25, 0.5, 0.75};
    private static final double[] SECOND = {-1, -0.5, 0, 0.5, 1, 1.5};

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rows-le-f2",
                "rows-le-f4",
                "rows-le-f8",
                "rows-be-f4",
                "rows-be-f8",
                "fortran",
                "columns",
                "fortran-columns",
                "version-2",
                "version-3"
            })
    void floatsAreInVoltsWhateverTheirOrder(String name) throws Exception {
        try (Capture capture = open(written(name + ".npy"), CaptureValues.at(1000))) {
            assertThat(CaptureValues.channels(capture)).containsExactly("channel1 in V", "channel2 in V");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(FIRST);
            assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(SECOND);
            assertThat(capture.timeBase().sampleRateHz()).hasValue(1000);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"le-i1", "le-i2", "be-i2", "le-i4", "be-i4", "le-i8", "u1", "le-u2", "be-u4", "le-u8"})
    void wholeNumbersHaveNoUnit(String name) throws Exception {
        try (Capture capture = open(written("rows-" + name + ".npy"), CaptureValues.at(1000))) {
            assertThat(CaptureValues.channels(capture)).containsExactly("channel1", "channel2");
            double[] expected = Arrays.stream(SECOND)
                    .map(value -> 4 * (name.contains("u") ? Math.abs(value) : value))
                    .toArray();
            assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(expected);
            boolean counts = List.of("le-i1", "le-i2", "be-i2", "u1").contains(name);
            assertThat(capture.samples().counts(0).isPresent()).isEqualTo(counts);
        }
    }

    @Test
    void oneDimensionIsOneChannelAndTruthValuesAreTwoLevels() throws Exception {
        try (Capture capture = open(written("one.npy"), CaptureValues.at(10))) {
            assertThat(CaptureValues.channels(capture)).containsExactly("channel1 in V");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(FIRST);
        }
        try (Capture capture = open(written("bool.npy"), CaptureValues.at(10))) {
            assertThat(CaptureValues.channels(capture)).containsExactly("channel1");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(0, 0, 0, 1, 1, 1);
        }
    }

    @Test
    void anArchiveNamesItsChannelsItsUnitsAndItsTime() throws Exception {
        try (Capture capture = open(written("named.npz"), ReadSettings.none())) {
            assertThat(CaptureValues.channels(capture)).containsExactly("signal1 in V", "signal2 in V");
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(FIRST);
            assertThat(CaptureValues.valuesOf(capture, 1)).containsExactly(-0.004, -0.002, 0, 0.002, 0.004, 0.006);
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(-1e-3, -0.5e-3, 0, 0.5e-3, 1e-3, 1.5e-3);
        }
        try (Capture capture = open(written("packed.npz"), ReadSettings.none())) {
            assertThat(CaptureValues.channels(capture)).containsExactly("pair1 in V", "pair2 in V");
            assertThat(capture.timeBase().sampleRateHz()).hasValue(2000);
            assertThat(capture.guessed()).containsEntry("sample rate found", "in the array fs");
        }
    }

    @Test
    void withoutARateAFirstColumnThatRisesIsTime() throws Exception {
        try (Capture capture = open(written("rows-le-f8.npy"), ReadSettings.none())) {
            assertThat(CaptureValues.channels(capture)).containsExactly("channel2 in V");
            assertThat(capture.timeBase().sampleRateHz()).hasValue(4);
            assertThat(CaptureValues.secondsOf(capture)[0]).isEqualTo(-0.5);
        }
        Path one = written("one.npy");
        assertThatThrownBy(() -> open(one, ReadSettings.none())).hasMessageContaining("--sample-rate HZ");
    }

    @Test
    void whatIsNoNumberLeavesAGap() throws Exception {
        Path file = array("'<f8'", "(5,)", 1, 2, Double.NaN, 4, 5);
        try (Capture capture = open(file, CaptureValues.at(10))) {
            assertThat(CaptureValues.valuesOf(capture, 0)).containsExactly(1, 2, 4, 5);
            assertThat(CaptureValues.secondsOf(capture)).containsExactly(0, 0.1, 0.3, 0.4);
        }
    }

    @Test
    void declaredLengthsAreNotTrusted() throws Exception {
        try (Capture capture = open(array("'<f8'", "(999999999999999999,)", 1, 2, 3), CaptureValues.at(10))) {
            assertThat(capture.sampleCount()).isEqualTo(3);
            assertThat(capture.guessed())
                    .containsEntry("length", "declared as 999999999999999999 rows, cut off after 3");
        }
        refused(array("'<f8'", "(2, 999999999999999999)", 1, 2, 3), "byte 0: the array is cut off");
        refused(array("'<f8'", "(999999, 99999)", 1, 2, 3), "the array has 99999 columns, not 1 to 1000");
        refused(array("'<f8'", "(0, 5)", 1, 2, 3), "has 0 columns");
        byte[] long2 = {(byte) 0x93, 'N', 'U', 'M', 'P', 'Y', 2, 0, -1, -1, -1, -1, 0};
        refused(Files.write(folder.resolve("long.npy"), long2), "the header of the array declares 4294967295 bytes");
    }

    @Test
    void whatIsNoTableOfNumbersIsRefused() throws Exception {
        refused(written("complex.npy"), "byte 0: the array holds no plain numbers");
        refused(written("cube.npy"), "byte 0: the array has 3 dimensions");
        refused(array("[('a', '|O')]", "(3,)", 1, 2, 3), "the array holds no plain numbers");
        refused(array("'|O'", "(3,)", 1, 2, 3), "the array holds no plain numbers");
        refused(
                archive("a.npy", Files.readAllBytes(written("one.npy")), "b.npy", header("'<f8'", "(3,)", 1, 2, 3)),
                "array 'b' has 3 rows and the first one 6");
    }

    @Test
    void namesInAnArchiveThatArePathsAreRefused() throws Exception {
        for (String name : List.of("../a.npy", "/a.npy", "a\\b.npy", "c:a.npy", ".a.npy")) {
            refused(archive(name, header("'<f8'", "(3,)", 1, 2, 3)), "an entry whose name is none of an array");
        }
    }

    @Test
    void anArchiveThatUnpacksToFarMoreThanItTakesIsRefused() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("a.npy"));
            zip.write(header("'|u1'", "(200000000,)"));
            byte[] zeros = new byte[1 << 20];
            for (int i = 0; i < 100; i++) {
                zip.write(zeros);
            }
            zip.closeEntry();
        }
        assertThat(bytes.size()).isLessThan(200_000);
        refused(Files.write(folder.resolve("bomb.npz"), bytes.toByteArray()), "far more than it takes packed");
    }

    @Test
    void aBrokenArchiveIsRefusedWithTheByte() throws Exception {
        byte[] good = Files.readAllBytes(written("packed.npz"));
        refused(Files.write(folder.resolve("cut.npz"), Arrays.copyOf(good, 60)), ", byte ");
        byte[] bad = good.clone();
        Arrays.fill(bad, 60, 160, (byte) 0x55);
        refused(Files.write(folder.resolve("bad.npz"), bad), ", byte ");
    }

    private void refused(Path file, String said) {
        assertThatThrownBy(() -> open(file, CaptureValues.at(10)))
                .isInstanceOf(UnreadableException.class)
                .hasMessageStartingWith(file.toString())
                .hasMessageContaining(said);
    }

    private Path written(String name) throws IOException {
        Path file = folder.resolve(name);
        try (InputStream stream = NumpyReaderTest.class.getResourceAsStream(name)) {
            Files.write(file, stream.readAllBytes());
        }
        return file;
    }

    @Test
    void namedFieldsAreTimeAndChannelsWithTheirUnits() throws Exception {
        // a row of 24 bytes: time in ms, four bytes that only fill up, a count, a text of 2, a big-endian float, a
        // truth value
        String type = "[('time (ms)', '<f8'), ('', '|V4'), ('c\\'ount', '<i2'), ('note', 'S2'), (\"x (mV)\", '>f4'),"
                + " ('bit', '|b1'), ('rest', 'V3')]";
        byte[] header = header(type, "(5,)");
        ByteBuffer bytes = ByteBuffer.allocate(header.length + 5 * 24).put(header);
        for (int i = 0; i < 5; i++) {
            bytes.order(ByteOrder.LITTLE_ENDIAN).putDouble(10 + i).putInt(-1).putShort((short) (100 * i));
            bytes.putShort((short) 0x4141)
                    .order(ByteOrder.BIG_ENDIAN)
                    .putFloat(250f * i)
                    .put((byte) (i % 2));
            bytes.put(new byte[3]);
        }
        Path file = Files.write(folder.resolve("fields.npy"), bytes.array());

        try (Capture capture = open(file, ReadSettings.none())) {
            assertThat(capture.channels())
                    .containsExactly(new Channel("c'ount", ""), new Channel("x", "V"), new Channel("bit", ""));
            assertThat(capture.timeBase().sampleRateHz()).hasValue(1000);
            assertThat(capture.timeBase().secondsAt(0)).isEqualTo(0.01);
            double[] values = new double[5];
            capture.samples().read(0, 0, values, 0, 5);
            assertThat(values).containsExactly(0, 100, 200, 300, 400);
            capture.samples().read(1, 0, values, 0, 5);
            assertThat(values).containsExactly(0, 0.25, 0.5, 0.75, 1);
            capture.samples().read(2, 0, values, 0, 5);
            assertThat(values).containsExactly(0, 1, 0, 1, 0);
        }
        ReadSettings byNumber =
                ReadSettings.none().withTime(new TimeSettings(Optional.of("c'ount"), ScaledUnit.parse("us")));
        try (Capture capture = open(file, byNumber)) {
            // 100 us apart
            assertThat(capture.timeBase().sampleRateHz()).hasValue(10_000);
        }
        ReadSettings asRead;
        try (Capture capture = open(file, ReadSettings.none())) {
            asRead = capture.asRead();
            assertThat(asRead.time()).isEqualTo(new TimeSettings(Optional.of("time (ms)"), ScaledUnit.parse("ms")));
            assertThat(asRead.units()).containsOnlyKeys("x");
        }
        try (Capture capture = open(file, asRead)) {
            assertThat(capture.asRead()).isEqualTo(asRead);
            assertThat(capture.channels()).hasSize(3);
            assertThat(capture.timeBase().sampleRateHz()).hasValue(1000);
        }
        ReadSettings even = ReadSettings.none()
                .withTime(new TimeSettings(Optional.of(TimeSettings.NONE), Optional.empty()))
                .withSampleRate(OptionalDouble.of(50));
        try (Capture capture = open(file, even)) {
            // read where they lie in the file
            assertThat(capture.timeBase().sampleRateHz()).hasValue(50);
            double[] values = new double[5];
            capture.samples().read(2, 0, values, 0, 5);
            assertThat(values).containsExactly(0, 0.25, 0.5, 0.75, 1);
        }
        byte[] cut = Arrays.copyOf(bytes.array(), bytes.capacity() - 1);
        try (Capture capture = open(Files.write(file, cut), ReadSettings.none())) {
            assertThat(capture.sampleCount()).isEqualTo(4);
            assertThat(capture.guessed()).containsEntry("length", "declared as 5 rows, cut off after 4");
        }
    }

    @Test
    void fieldsOfNoNumbersAndEndlessNamesAreRefused() throws Exception {
        for (String type : List.of(
                "[('a', 'S4')]",
                "[('a', '<f8', (2,))]",
                "[('a', [('b', '<f8')])]",
                "[('" + "a".repeat(30_000) + "', '<f8')]",
                "[(('title', 'a'), '<f8')]",
                "[('a', 'V99999'), ('b', '<f8')]",
                "[")) {
            assertThatThrownBy(() -> open(array(type, "(2,)", 1, 2), ReadSettings.none()))
                    .isInstanceOf(UnreadableException.class)
                    .hasMessageContaining("the array holds no plain numbers");
        }
    }

    private Path array(String type, String shape, double... values) throws IOException {
        return Files.write(folder.resolve("array.npy"), header(type, shape, values));
    }

    private static byte[] header(String type, String shape, double... values) {
        String text = "{'descr': " + type + ", 'fortran_order': False, 'shape': " + shape + ", }\n";
        ByteBuffer bytes =
                ByteBuffer.allocate(10 + text.length() + 8 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.put((byte) 0x93)
                .put("NUMPY".getBytes(StandardCharsets.US_ASCII))
                .put((byte) 1)
                .put((byte) 0);
        bytes.putShort((short) text.length()).put(text.getBytes(StandardCharsets.US_ASCII));
        for (double value : values) {
            bytes.putDouble(value);
        }
        return bytes.array();
    }

    private Path archive(Object... namesAndBytes) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (int i = 0; i < namesAndBytes.length; i += 2) {
                zip.putNextEntry(new ZipEntry((String) namesAndBytes[i]));
                zip.write((byte[]) namesAndBytes[i + 1]);
                zip.closeEntry();
            }
        }
        return Files.write(folder.resolve("arrays.npz"), bytes.toByteArray());
    }

    private static Capture open(Path file, ReadSettings settings) throws UnreadableException, IOException {
        return Captures.open(List.of(file), settings, Progress.NONE);
    }
}
