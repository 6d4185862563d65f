// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.wav;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/**
 * What the format chunk says.
 *
 * @param coding how a sample is coded
 * @param channels number of channels, at least 1
 * @param sampleRateHz samples a second, 0 if not said
 * @param bits number of bits that count in a sample
 * @param sampleBytes number of bytes that hold a sample
 * @param remark what in the chunk contradicts itself, and what was taken
 */
record WavFormat(
        SampleCoding coding, int channels, long sampleRateHz, int bits, int sampleBytes, Optional<String> remark) {
    private static final int SHORTEST = 16;
    private static final int EXTENSIBLE_BYTES = 28;
    private static final int LONGEST = 64;
    private static final int EXTENSIBLE = 0xFFFE;
    private static final int MOST_CHANNELS = 1000;
    private static final int MOST_BYTES = 8;

    int frameBytes() {
        return channels * sampleBytes;
    }

    /**
     * Reads the chunk, whose header was read.
     *
     * @param sizeBytes as declared
     */
    static WavFormat read(ByteSource source, ByteOrder order, long sizeBytes) throws UnreadableException, IOException {
        long start = source.position();
        if (sizeBytes < SHORTEST) {
            throw source.unreadable(start, "the format chunk is too short", "export the recording again");
        }
        byte[] bytes = source.require((int) Math.min(LONGEST, sizeBytes), "the format chunk");
        source.skip(sizeBytes - bytes.length);
        ByteBuffer chunk = ByteBuffer.wrap(bytes).order(order);
        int tag = chunk.getShort(0) & 0xFFFF;
        if (tag == EXTENSIBLE && bytes.length >= EXTENSIBLE_BYTES) {
            // the first number of the identifier of the sub-format is the tag; some write it in the other byte order
            int first = chunk.getInt(24);
            tag = (first >>> 16 == 0 ? first : Integer.reverseBytes(first)) & 0xFFFF;
        }
        int channels = chunk.getShort(2) & 0xFFFF;
        long rate = chunk.getInt(4) & 0xFFFFFFFFL;
        int align = chunk.getShort(12) & 0xFFFF;
        int bits = chunk.getShort(14) & 0xFFFF;
        if (channels == 0 || channels > MOST_CHANNELS) {
            throw source.unreadable(start + 2, "declares " + channels + " channels", "export fewer channels");
        }
        Optional<SampleCoding> coding = SampleCoding.of(tag);
        if (coding.isEmpty()) {
            String code = String.format("0x%04X", tag);
            throw source.unreadable(start, "is coded in a way that is not read here, " + code, "save it as PCM");
        }
        return sized(source, start, coding.get(), channels, rate, align, bits);
    }

    private static WavFormat sized(
            ByteSource source, long start, SampleCoding coding, int channels, long rate, int align, int bits)
            throws UnreadableException {
        boolean alignFits = align > 0 && align % channels == 0 && align / channels * 8 >= bits;
        int bytes = alignFits ? align / channels : (bits + 7) / 8;
        if (bits == 0 || bytes == 0 || bytes > MOST_BYTES || !coding.takes(bits, bytes)) {
            throw source.unreadable(
                    start + 14,
                    "has samples of " + bits + " bits in " + bytes + " bytes, which is not read here",
                    "save it as PCM of 16, 24 or 32 bits");
        }
        Optional<String> remark = alignFits
                ? Optional.empty()
                : Optional.of("says " + align + " bytes for a sample of all channels, taken as " + bytes * channels);
        return new WavFormat(coding, channels, rate, bits, bytes, remark);
    }
}
