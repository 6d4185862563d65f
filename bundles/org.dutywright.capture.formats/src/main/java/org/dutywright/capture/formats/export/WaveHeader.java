// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.export;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** What lies before the samples of a WAV file: the format, a comment, and the sizes of all. */
final class WaveHeader {
    private static final long MOST_SIZE = 0xFFFF_FFFFL;
    private static final int CHUNK = 8;
    private static final int FORMAT_BYTES = 16;
    private static final int SIZES_BYTES = 28;
    private static final short PCM = 1;

    private WaveHeader() {}

    /**
     * The bytes up to the first sample.
     *
     * @param rateHz sample rate, at most 32 bits
     * @param frames samples of each channel
     * @param comment the INFO chunk's comment
     */
    static byte[] of(int channels, long rateHz, long frames, String comment) {
        byte[] text = comment.getBytes(StandardCharsets.UTF_8);
        // ends with 0 and fills whole words
        text = Arrays.copyOf(text, (text.length + 2) / 2 * 2);
        int list = 4 + CHUNK + text.length;
        int frameBytes = channels * Short.BYTES;
        long data = frames * frameBytes;
        long riff = 4L + CHUNK + FORMAT_BYTES + CHUNK + list + CHUNK + data;
        boolean large = riff > MOST_SIZE;
        int bytes = (int) (CHUNK + riff - data) + (large ? CHUNK + SIZES_BYTES : 0);
        ByteBuffer header = ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
        chunk(header, large ? "RF64" : "RIFF", large ? MOST_SIZE : riff);
        id(header, "WAVE");
        if (large) {
            chunk(header, "ds64", SIZES_BYTES);
            header.putLong(riff + CHUNK + SIZES_BYTES)
                    .putLong(data)
                    .putLong(frames)
                    .putInt(0);
        }
        chunk(header, "fmt ", FORMAT_BYTES);
        header.putShort(PCM).putShort((short) channels).putInt((int) rateHz);
        header.putInt((int) Math.min(MOST_SIZE, rateHz * frameBytes));
        header.putShort((short) frameBytes).putShort((short) Short.SIZE);
        chunk(header, "LIST", list);
        id(header, "INFO");
        chunk(header, "ICMT", text.length);
        header.put(text);
        chunk(header, "data", large ? MOST_SIZE : data);
        return header.array();
    }

    private static void chunk(ByteBuffer header, String id, long size) {
        id(header, id);
        header.putInt((int) size);
    }

    private static void id(ByteBuffer header, String id) {
        header.put(id.getBytes(StandardCharsets.US_ASCII));
    }
}
