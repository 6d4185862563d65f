// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.wav;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Writes small sound files by hand, right or wrong as told. */
public final class WavBytes {
    static final int PCM = 1;
    static final int FLOAT = 3;
    static final int A_LAW = 6;
    static final int U_LAW = 7;

    private final ByteOrder order;
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

    private WavBytes(String id, ByteOrder order) {
        this.order = order;
        text(id);
        int32(0xFFFFFFFF);
        text("WAVE");
    }

    public static WavBytes riff() {
        return new WavBytes("RIFF", ByteOrder.LITTLE_ENDIAN);
    }

    public static WavBytes rifx() {
        return new WavBytes("RIFX", ByteOrder.BIG_ENDIAN);
    }

    public static WavBytes rf64(long dataBytes) {
        WavBytes wav = new WavBytes("RF64", ByteOrder.LITTLE_ENDIAN);
        wav.text("ds64");
        wav.int32(28);
        wav.int64(dataBytes + 100);
        wav.int64(dataBytes);
        wav.int64(0);
        wav.int32(0);
        return wav;
    }

    private void text(String text) {
        bytes.writeBytes(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    private void int16(int value) {
        bytes.writeBytes(
                ByteBuffer.allocate(2).order(order).putShort((short) value).array());
    }

    private void int32(int value) {
        bytes.writeBytes(ByteBuffer.allocate(4).order(order).putInt(value).array());
    }

    private void int64(long value) {
        bytes.writeBytes(ByteBuffer.allocate(8).order(order).putLong(value).array());
    }

    /** A format chunk whose numbers agree. */
    public WavBytes format(int tag, int channels, int rate, int bits) {
        return format(tag, channels, rate, (bits + 7) / 8 * channels, bits);
    }

    WavBytes format(int tag, int channels, int rate, int align, int bits) {
        text("fmt ");
        int32(16);
        int16(tag);
        int16(channels);
        int32(rate);
        int32(rate * align);
        int16(align);
        int16(bits);
        return this;
    }

    public WavBytes extensible(int subFormat, int channels, int rate, int bits) {
        text("fmt ");
        int32(40);
        int16(0xFFFE);
        int16(channels);
        int32(rate);
        int align = (bits + 7) / 8 * channels;
        int32(rate * align);
        int16(align);
        int16(bits);
        int16(22);
        int16(bits);
        int32(0);
        int16(subFormat);
        bytes.writeBytes(new byte[14]);
        return this;
    }

    public WavBytes chunk(String id, byte[] content) {
        text(id);
        int32(content.length);
        bytes.writeBytes(content);
        if (content.length % 2 != 0) {
            bytes.write(0);
        }
        return this;
    }

    WavBytes dataHeader(int declaredBytes) {
        text("data");
        int32(declaredBytes);
        return this;
    }

    /** A data chunk. */
    public WavBytes data(byte... samples) {
        return dataHeader(samples.length).raw(samples);
    }

    WavBytes raw(byte... samples) {
        bytes.writeBytes(samples);
        return this;
    }

    public byte[] toBytes() {
        return bytes.toByteArray();
    }
}
