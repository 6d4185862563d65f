// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dutywright.capture.Capture;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.Progress;

/** Writes one structured array: a field {@code time_s} and one for each channel, all of them doubles. */
final class NumpyWriter implements CaptureWriter {
    private static final byte[] MAGIC = {(byte) 0x93, 'N', 'U', 'M', 'P', 'Y'};
    private static final int ALIGNMENT = 64;
    private static final int LONGEST_SHORT_HEADER = 65_535 - ALIGNMENT;

    @Override
    public String ending() {
        return ".npy";
    }

    @Override
    public Prepared prepare(Capture capture, Map<String, String> settings, Progress progress) {
        return new Prepared(stream -> write(capture, stream, progress), List.of());
    }

    private static void write(Capture capture, OutputStream stream, Progress progress) throws IOException {
        stream.write(header(capture));
        RowBlocks rows = RowBlocks.of(capture, "writing the array", progress);
        ByteBuffer row = ByteBuffer.allocate((capture.channels().size() + 1) * Double.BYTES)
                .order(ByteOrder.LITTLE_ENDIAN);
        while (rows.next()) {
            double[] seconds = rows.seconds();
            for (int i = 0; i < rows.count(); i++) {
                row.clear().putDouble(seconds[i]);
                for (double[] channel : rows.values()) {
                    row.putDouble(channel[i]);
                }
                stream.write(row.array());
            }
        }
    }

    private static byte[] header(Capture capture) {
        List<String> names = new ArrayList<>(List.of("time_s"));
        capture.channels().forEach(channel -> names.add(Names.withOtherUnit(channel)));
        String fields = ColumnChoice.uniqueNames(names).stream()
                .map(name -> "(" + literal(name) + ", '<f8')")
                .collect(Collectors.joining(", ", "[", "]"));
        String text = "{'descr': " + fields + ", 'fortran_order': False, 'shape': (" + capture.sampleCount() + ",), }";
        boolean latin = StandardCharsets.ISO_8859_1.newEncoder().canEncode(text);
        boolean brief = text.length() <= LONGEST_SHORT_HEADER;
        Charset charset = latin ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8;
        return header(text.getBytes(charset), latin ? brief ? 1 : 2 : 3);
    }

    private static byte[] header(byte[] text, int version) {
        int lengthBytes = version == 1 ? Short.BYTES : Integer.BYTES;
        int start = MAGIC.length + 2 + lengthBytes;
        // ends with a line feed, and the numbers begin aligned
        int whole = Math.ceilDiv(start + text.length + 1, ALIGNMENT) * ALIGNMENT;
        ByteBuffer header = ByteBuffer.allocate(whole).order(ByteOrder.LITTLE_ENDIAN);
        header.put(MAGIC).put((byte) version).put((byte) 0);
        if (version == 1) {
            header.putShort((short) (whole - start));
        } else {
            header.putInt(whole - start);
        }
        header.put(text);
        while (header.remaining() > 1) {
            header.put((byte) ' ');
        }
        return header.put((byte) '\n').array();
    }

    private static String literal(String name) {
        return "'" + name.replace("\\", "\\\\").replace("'", "\\'").replaceAll("\\p{Cntrl}", " ") + "'";
    }
}
