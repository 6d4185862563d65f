// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Writes recordings of one channel of {@link Signal} in binary formats. */
final class SampleFile {
    private static final int WAVE_HEADER_BYTES = 44;
    private static final int ARRAY_HEADER_BYTES = 128;

    private SampleFile() {}

    /**
     * Writes one.
     *
     * @param format {@code wav}, else ending in int16 or float32, as an array
     */
    static void write(String format, int sampleRateHz, int samples, OutputStream stream) throws IOException {
        boolean floats = format.endsWith("float32");
        stream.write(format.equals("wav") ? wave(sampleRateHz, samples) : array(floats ? "<f4" : "<i2", samples));
        Signal signal = new Signal(sampleRateHz);
        ByteBuffer number = ByteBuffer.allocate(Float.BYTES).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < samples; i++) {
            number.clear();
            if (floats) {
                number.putFloat((float) (signal.next() * Signal.VOLTS_A_COUNT));
            } else {
                number.putShort((short) signal.next());
            }
            stream.write(number.array(), 0, number.position());
        }
    }

    private static byte[] wave(int sampleRateHz, int samples) {
        int bytes = samples * Short.BYTES;
        return ByteBuffer.allocate(WAVE_HEADER_BYTES)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put(ascii("RIFF"))
                .putInt(WAVE_HEADER_BYTES - 8 + bytes)
                .put(ascii("WAVEfmt "))
                .putInt(16)
                .putShort((short) 1)
                .putShort((short) 1)
                .putInt(sampleRateHz)
                .putInt(sampleRateHz * Short.BYTES)
                .putShort((short) Short.BYTES)
                .putShort((short) Short.SIZE)
                .put(ascii("data"))
                .putInt(bytes)
                .array();
    }

    static byte[] array(String type, long samples) {
        String text = "{'descr': '" + type + "', 'fortran_order': False, 'shape': (" + samples + ",), }";
        int length = ARRAY_HEADER_BYTES - 10;
        String padded = text + " ".repeat(length - 1 - text.length()) + "\n";
        return ByteBuffer.allocate(ARRAY_HEADER_BYTES)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put((byte) 0x93)
                .put(ascii("NUMPY"))
                .put((byte) 1)
                .put((byte) 0)
                .putShort((short) length)
                .put(ascii(padded))
                .array();
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
