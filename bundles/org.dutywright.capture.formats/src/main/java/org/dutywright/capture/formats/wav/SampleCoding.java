// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.wav;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;

/** How one sample is coded. Full scale is 1. */
enum SampleCoding {
    /** Whole numbers: without a sign up to one byte, else with one. Odd widths are left-justified. */
    PCM(1, "PCM") {
        @Override
        boolean takes(int bits, int bytes) {
            return true;
        }

        @Override
        double value(ByteBuffer buffer, int at, int bytes) {
            return bytes == 1
                    ? ((buffer.get(at) & 0xFF) - 128) / 128.0
                    : wholeNumber(buffer, at, bytes) * Math.scalb(1.0, 1 - 8 * bytes);
        }
    },
    /** IEEE 754, 32 or 64 bits. */
    FLOAT(3, "float") {
        @Override
        boolean takes(int bits, int bytes) {
            return bits == 8 * bytes && (bytes == 4 || bytes == 8);
        }

        @Override
        double value(ByteBuffer buffer, int at, int bytes) {
            return bytes == 4 ? buffer.getFloat(at) : buffer.getDouble(at);
        }
    },
    A_LAW(6, "A-law") {
        @Override
        boolean takes(int bits, int bytes) {
            return bytes == 1;
        }

        @Override
        double value(ByteBuffer buffer, int at, int bytes) {
            return Companding.aLaw(buffer.get(at));
        }
    },
    U_LAW(7, "u-law") {
        @Override
        boolean takes(int bits, int bytes) {
            return bytes == 1;
        }

        @Override
        double value(ByteBuffer buffer, int at, int bytes) {
            return Companding.uLaw(buffer.get(at));
        }
    };

    private final int tag;
    private final String word;

    SampleCoding(int tag, String word) {
        this.tag = tag;
        this.word = word;
    }

    /** The coding that the tag of a format chunk stands for. */
    static Optional<SampleCoding> of(int tag) {
        for (SampleCoding coding : values()) {
            if (coding.tag == tag) {
                return Optional.of(coding);
            }
        }
        return Optional.empty();
    }

    String word() {
        return word;
    }

    /** Whether samples of so many bits may lie in so many bytes. */
    abstract boolean takes(int bits, int bytes);

    /** The sample at a place of a buffer that has the file's byte order; may be no number if the file holds none. */
    abstract double value(ByteBuffer buffer, int at, int bytes);

    private static long wholeNumber(ByteBuffer buffer, int at, int bytes) {
        return switch (bytes) {
            case 2 -> buffer.getShort(at);
            case 4 -> buffer.getInt(at);
            case 8 -> buffer.getLong(at);
            default -> oddNumber(buffer, at, bytes);
        };
    }

    private static long oddNumber(ByteBuffer buffer, int at, int bytes) {
        boolean big = buffer.order() == ByteOrder.BIG_ENDIAN;
        long value = buffer.get(big ? at : at + bytes - 1);
        for (int i = 1; i < bytes; i++) {
            value = value << 8 | (buffer.get(big ? at + i : at + bytes - 1 - i) & 0xFF);
        }
        return value;
    }
}
