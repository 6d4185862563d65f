// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.formats.comtrade.ComtradeCaptureReader;
import org.dutywright.capture.formats.comtrade.ComtradeText;
import org.dutywright.capture.formats.csv.CsvCaptureReader;
import org.dutywright.capture.formats.hdf5.Hdf5CaptureReader;
import org.dutywright.capture.formats.hdf5.Hdf5ReaderTest;
import org.dutywright.capture.formats.mat.MatCaptureReader;
import org.dutywright.capture.formats.mat.MatReaderTest;
import org.dutywright.capture.formats.numpy.NumpyCaptureReader;
import org.dutywright.capture.formats.numpy.NumpyReaderTest;
import org.dutywright.capture.formats.vcd.VcdCaptureReader;
import org.dutywright.capture.formats.wav.WavBytes;
import org.dutywright.capture.formats.wav.WavCaptureReader;
import org.dutywright.capture.store.ArrowCaptureReader;
import org.dutywright.capture.store.CaptureStore;

/** Sound files of each format, small, to be spoiled. */
final class HostileCorpus {
    private static final int ROWS = 40;

    private HostileCorpus() {}

    /**
     * A recording of one or two files.
     *
     * @param files name and content, the one to be opened first
     */
    record Sample(Map<String, byte[]> files) {
        static Sample of(String name, byte[] bytes) {
            return new Sample(Map.of(name, bytes));
        }
    }

    static CaptureReader reader(String id) {
        return switch (id) {
            case "csv" -> new CsvCaptureReader();
            case "wav" -> new WavCaptureReader();
            case "comtrade" -> new ComtradeCaptureReader();
            case "vcd" -> new VcdCaptureReader();
            case "numpy" -> new NumpyCaptureReader();
            case "hdf5" -> new Hdf5CaptureReader();
            case "mat" -> new MatCaptureReader();
            case "arrow" -> new ArrowCaptureReader();
            default -> throw new IllegalArgumentException(id);
        };
    }

    static List<Sample> of(String id) throws IOException {
        return switch (id) {
            case "csv" -> csv();
            case "wav" -> wav();
            case "comtrade" -> comtrade();
            case "vcd" -> vcd();
            case "numpy" -> numpy();
            case "hdf5" -> hdf5();
            case "mat" -> mat();
            default -> arrow();
        };
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    private static List<Sample> csv() {
        List<Sample> samples = new ArrayList<>();
        for (String delimiter : List.of(",", ";", "\t")) {
            StringBuilder text = new StringBuilder("made: by hand\r\n");
            text.append(String.join(delimiter, "time (ms)", "signal1", "\"two\" (mV)"))
                    .append("\r\n");
            for (int i = 0; i < ROWS; i++) {
                text.append(i * 0.25)
                        .append(delimiter)
                        .append(i % 7 < 3 ? "4.9" : "0.1")
                        .append(delimiter)
                        .append("5e-1\r\n");
            }
            samples.add(Sample.of("pedal.csv", ascii(text.toString())));
        }
        StringBuilder clock = new StringBuilder("when;a [-]\n");
        StringBuilder parts = new StringBuilder("t (ms),a\n");
        for (int i = 0; i < ROWS; i++) {
            clock.append("25.11.2026 23:59:")
                    .append(20 + i)
                    .append(",5;")
                    .append(i % 7)
                    .append('\n');
            parts.append(i % 10).append(',').append(i % 7).append('\n');
        }
        samples.add(Sample.of("pedal.csv", ascii(clock.toString())));
        samples.add(Sample.of("pedal.csv", ascii(parts.toString())));
        samples.add(Sample.of("pedal.csv", ascii("t;a\n0,0;1,5\n0,1;2,5\n0,2;\n0,4;1,0\n")));
        return samples;
    }

    private static List<Sample> wav() {
        byte[] data = new byte[6 * ROWS];
        for (int i = 0; i < data.length; i++) {
            data[i] = (byte) (37 * i);
        }
        List<Sample> samples = new ArrayList<>();
        for (int bits : new int[] {8, 16, 24}) {
            samples.add(Sample.of(
                    "pedal.wav",
                    WavBytes.riff().format(1, 2, 8000, bits).data(data).toBytes()));
        }
        samples.add(Sample.of(
                "pedal.wav",
                WavBytes.riff()
                        .format(1, 2, 8000, 16)
                        .chunk("LIST", comment())
                        .data(data)
                        .toBytes()));
        samples.add(Sample.of(
                "pedal.wav",
                WavBytes.rf64(data.length).extensible(3, 1, 8000, 32).data(data).toBytes()));
        samples.add(Sample.of(
                "pedal.wav",
                WavBytes.rifx()
                        .chunk("LIST", new byte[9])
                        .format(7, 1, 8000, 8)
                        .data(data)
                        .toBytes()));
        return samples;
    }

    private static byte[] comment() {
        byte[] text = ascii("signal1: full scale 12.1 V\npump: full scale 1e-3 A\nstart: -0.5 s\0");
        ByteBuffer list =
                ByteBuffer.allocate(12 + text.length + text.length % 2).order(ByteOrder.LITTLE_ENDIAN);
        return list.put(ascii("INFOICMT")).putInt(text.length).put(text).array();
    }

    private static byte[] namedFields() {
        String text = "{'descr': [('time_s', '<f8'), ('', '|V4'), ('a\\'b (mV)', '>i2'), ('c', '|b1')],"
                + " 'fortran_order': False, 'shape': (" + ROWS + ",), }\n";
        ByteBuffer bytes = ByteBuffer.allocate(10 + text.length() + 15 * ROWS).order(ByteOrder.LITTLE_ENDIAN);
        bytes.put((byte) 0x93).put(ascii("NUMPY\1\0")).putShort((short) text.length());
        bytes.put(ascii(text));
        for (int i = 0; i < ROWS; i++) {
            bytes.putDouble(i / 8.0).putInt(-1).putShort((short) (100 * i)).put((byte) (i % 2));
        }
        return bytes.array();
    }

    private static List<Sample> comtrade() {
        StringBuilder rows = new StringBuilder();
        double[] values = new double[ROWS];
        for (int i = 0; i < ROWS; i++) {
            values[i] = i % 7 < 3 ? 2000 : 10;
            rows.append(i + 1)
                    .append(',')
                    .append(i * 1000)
                    .append(',')
                    .append((int) values[i])
                    .append(",1\r\n");
        }
        byte[] binary = ComtradeText.binary(2, values);
        List<Sample> samples = new ArrayList<>();
        for (String rates : List.of("1\n1000,40", "2\n1000,20\n100,40", "0\n0,40")) {
            samples.add(new Sample(Map.of(
                    "pedal.cfg", ascii(ComtradeText.config("ASCII", rates)), "pedal.dat", ascii(rows.toString()))));
            samples.add(
                    new Sample(Map.of("pedal.cfg", ascii(ComtradeText.config("BINARY", rates)), "pedal.dat", binary)));
        }
        ByteArrayOutputStream combined = new ByteArrayOutputStream();
        combined.writeBytes(ascii("--- file type: CFG ---\n" + ComtradeText.config("BINARY", "1\n1000,40")));
        combined.writeBytes(ascii("--- file type: DAT BINARY: " + binary.length + " ---\n"));
        combined.writeBytes(binary);
        samples.add(Sample.of("pedal.cff", combined.toByteArray()));
        return samples;
    }

    private static List<Sample> vcd() {
        StringBuilder dump = new StringBuilder("$timescale 1 us $end\n$scope module yard $end\n");
        dump.append("$var wire 1 ! signal1 $end\n$var reg 4 ab count [3:0] $end\n$var real 64 r volts $end\n");
        dump.append("$upscope $end\n$enddefinitions $end\n#0\n$dumpvars\n0!\nb0 ab\nr0 r\n$end\n");
        for (int i = 1; i < ROWS; i++) {
            dump.append("#" + 500 * i + "\n" + i % 2 + "!\nb" + Integer.toBinaryString(i % 16) + " ab\nr" + i / 8.0
                    + " r\n");
        }
        return List.of(
                Sample.of("pedal.vcd", ascii(dump.toString())),
                Sample.of(
                        "pedal.vcd",
                        ascii("$timescale 1s $end $var wire 1 ! a $end $enddefinitions $end #0 0! #3 x! #4 1!")));
    }

    private static List<Sample> numpy() throws IOException {
        List<Sample> samples = new ArrayList<>(resources(
                NumpyReaderTest.class,
                "rows-le-f4.npy",
                "rows-be-i2.npy",
                "fortran.npy",
                "columns.npy",
                "version-2.npy",
                "named.npz",
                "packed.npz"));
        samples.add(Sample.of("fields.npy", namedFields()));
        return samples;
    }

    private static List<Sample> hdf5() throws IOException {
        return resources(
                Hdf5ReaderTest.class,
                "channels.h5",
                "indexes.h5",
                "counts.h5",
                "odd.h5",
                "unfinished.h5",
                "many.h5",
                "level-7.3.mat");
    }

    private static List<Sample> mat() throws IOException {
        return resources(
                MatReaderTest.class, "columns.mat", "rows.mat", "matrix.mat", "structs.mat", "odd.mat", "swapped.mat");
    }

    private static List<Sample> arrow() throws IOException {
        double[] ramp = IntStream.range(0, ROWS).mapToDouble(i -> i / 8.0).toArray();
        double[] stamps = ramp.clone();
        stamps[7] += 0.03;
        List<String> names = List.of("signal1", "signal2");
        List<String> units = List.of("V", "A");
        return List.of(
                Sample.of("pedal.arrow", stored(Captures.ofArrays(names, units, -1, 1000, ramp, ramp))),
                Sample.of("pedal.arrow", stored(Captures.ofStampedArrays(names, units, stamps, ramp, ramp))));
    }

    private static byte[] stored(Capture capture) throws IOException {
        ByteArrayOutputStream stream = new ByteArrayOutputStream();
        CaptureStore.write(capture, Map.of(), stream, Progress.NONE);
        return stream.toByteArray();
    }

    private static List<Sample> resources(Class<?> beside, String... names) throws IOException {
        List<Sample> samples = new ArrayList<>();
        for (String name : names) {
            try (InputStream stream = beside.getResourceAsStream(name)) {
                samples.add(Sample.of(name, stream.readAllBytes()));
            }
        }
        return samples;
    }
}
