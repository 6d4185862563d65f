// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal;

import java.nio.ByteBuffer;
import java.nio.FloatBuffer;
import java.nio.ShortBuffer;
import org.dutywright.capture.PlacedSamples;

/** Decoders of the numbers that most recordings hold. */
public final class Decoders {
    /** Numbers copied at once out of a buffer: compilers make vector code of loops over arrays, not of those over buffers. */
    private static final int PIECE = 1 << 12;

    private Decoders() {}

    /** One number, given by its place in a buffer. */
    @FunctionalInterface
    public interface NumberAt {
        /** The number at a place. */
        double at(ByteBuffer buffer, int place);
    }

    /** Any numbers, multiplied by a factor. */
    public static PlacedSamples.Decoder of(NumberAt number, double factor) {
        return (buffer, stride, target, offset, count) -> {
            for (int i = 0; i < count; i++) {
                target[offset + i] = number.at(buffer, i * stride) * factor;
            }
        };
    }

    /** Whole numbers of 16 bits with a sign, multiplied by a factor. */
    public static PlacedSamples.Decoder shorts(double factor) {
        return (buffer, stride, target, offset, count) -> {
            if (stride == Short.BYTES) {
                shorts(buffer.asShortBuffer(), factor, target, offset, count);
                return;
            }
            for (int i = 0; i < count; i++) {
                target[offset + i] = buffer.getShort(i * stride) * factor;
            }
        };
    }

    private static void shorts(ShortBuffer numbers, double factor, double[] target, int offset, int count) {
        short[] piece = new short[Math.min(PIECE, count)];
        for (int done = 0; done < count; done += piece.length) {
            int part = Math.min(piece.length, count - done);
            numbers.get(piece, 0, part);
            for (int i = 0; i < part; i++) {
                target[offset + done + i] = piece[i] * factor;
            }
        }
    }

    /** Numbers in single precision, multiplied by a factor. */
    public static PlacedSamples.Decoder floats(double factor) {
        return (buffer, stride, target, offset, count) -> {
            if (stride == Float.BYTES) {
                floats(buffer.asFloatBuffer(), factor, target, offset, count);
                return;
            }
            for (int i = 0; i < count; i++) {
                target[offset + i] = buffer.getFloat(i * stride) * factor;
            }
        };
    }

    private static void floats(FloatBuffer numbers, double factor, double[] target, int offset, int count) {
        float[] piece = new float[Math.min(PIECE, count)];
        for (int done = 0; done < count; done += piece.length) {
            int part = Math.min(piece.length, count - done);
            numbers.get(piece, 0, part);
            for (int i = 0; i < part; i++) {
                target[offset + done + i] = piece[i] * factor;
            }
        }
    }
}
