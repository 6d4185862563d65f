// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.nio.ByteBuffer;
import java.nio.FloatBuffer;
import java.nio.ShortBuffer;

/** How a number lies in a little-endian buffer. */
enum NumberType {
    INT8(1) {
        @Override
        double at(ByteBuffer buffer, int place) {
            return buffer.get(place);
        }
    },
    UINT8(1) {
        @Override
        double at(ByteBuffer buffer, int place) {
            return Byte.toUnsignedInt(buffer.get(place));
        }
    },
    INT16(2) {
        @Override
        double at(ByteBuffer buffer, int place) {
            return buffer.getShort(place);
        }

        @Override
        void read(ByteBuffer buffer, double[] target, int offset, int count) {
            short[] piece = new short[Math.min(PIECE, count)];
            ShortBuffer shorts = buffer.asShortBuffer();
            for (int done = 0; done < count; done += piece.length) {
                int part = Math.min(piece.length, count - done);
                shorts.get(piece, 0, part);
                for (int i = 0; i < part; i++) {
                    target[offset + done + i] = piece[i];
                }
            }
        }
    },
    UINT16(2) {
        @Override
        double at(ByteBuffer buffer, int place) {
            return Short.toUnsignedInt(buffer.getShort(place));
        }
    },
    INT32(4) {
        @Override
        double at(ByteBuffer buffer, int place) {
            return buffer.getInt(place);
        }
    },
    UINT32(4) {
        @Override
        double at(ByteBuffer buffer, int place) {
            return Integer.toUnsignedLong(buffer.getInt(place));
        }
    },
    INT64(8) {
        @Override
        double at(ByteBuffer buffer, int place) {
            return buffer.getLong(place);
        }
    },
    UINT64(8) {
        @Override
        double at(ByteBuffer buffer, int place) {
            long value = buffer.getLong(place);
            // 2 to the power of 64, where the sign bit stands for half of it
            return value >= 0 ? value : value + 0x1p64;
        }
    },
    FLOAT16(2) {
        @Override
        double at(ByteBuffer buffer, int place) {
            return Float.float16ToFloat(buffer.getShort(place));
        }
    },
    FLOAT32(4) {
        @Override
        double at(ByteBuffer buffer, int place) {
            return buffer.getFloat(place);
        }

        @Override
        void read(ByteBuffer buffer, double[] target, int offset, int count) {
            float[] piece = new float[Math.min(PIECE, count)];
            FloatBuffer floats = buffer.asFloatBuffer();
            for (int done = 0; done < count; done += piece.length) {
                int part = Math.min(piece.length, count - done);
                floats.get(piece, 0, part);
                for (int i = 0; i < part; i++) {
                    target[offset + done + i] = piece[i];
                }
            }
        }
    },
    FLOAT64(8) {
        @Override
        double at(ByteBuffer buffer, int place) {
            return buffer.getDouble(place);
        }

        @Override
        void read(ByteBuffer buffer, double[] target, int offset, int count) {
            buffer.asDoubleBuffer().get(target, offset, count);
        }
    };

    /** Numbers copied at once out of a buffer: compilers turn loops over arrays into vector code, those over buffers not. */
    private static final int PIECE = 1 << 12;

    private final int bytes;

    NumberType(int bytes) {
        this.bytes = bytes;
    }

    /** Bytes of one number. */
    int bytes() {
        return bytes;
    }

    /** Whether numbers are whole. */
    boolean whole() {
        return this != FLOAT16 && this != FLOAT32 && this != FLOAT64;
    }

    /** The number at a byte of a buffer. */
    abstract double at(ByteBuffer buffer, int place);

    /** Reads the numbers at the start of a buffer. */
    void read(ByteBuffer buffer, double[] target, int offset, int count) {
        for (int i = 0; i < count; i++) {
            target[offset + i] = at(buffer, i * bytes);
        }
    }
}
