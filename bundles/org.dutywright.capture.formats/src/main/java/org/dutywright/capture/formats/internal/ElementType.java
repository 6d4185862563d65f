// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.capture.PlacedSamples;

/**
 * How an element is written.
 *
 * @param kind f float, i whole number, u whole number without sign, b truth value
 * @param bytes of one element
 * @param order of its bytes
 */
public record ElementType(char kind, int bytes, ByteOrder order) {
    private static final Pattern CODE = Pattern.compile("([<>|=])?([fiub])([1248])");

    /** The type that a description such as {@code <f4} stands for. */
    public static Optional<ElementType> of(String code) {
        Matcher matcher = CODE.matcher(code);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        char kind = matcher.group(2).charAt(0);
        int bytes = Integer.parseInt(matcher.group(3));
        if ((kind == 'f' && bytes == 1) || (kind == 'b' && bytes != 1)) {
            return Optional.empty();
        }
        ByteOrder order = ">".equals(matcher.group(1)) ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
        return Optional.of(new ElementType(kind, bytes, order));
    }

    /** Whether elements are floating point. */
    public boolean isFloat() {
        return kind == 'f';
    }

    /** Whether elements are whole numbers that fit 16 bits with sign. */
    public boolean isCount() {
        return (kind == 'i' && bytes <= 2) || (kind == 'u' && bytes == 1);
    }

    /** Decodes elements and multiplies each by a factor. */
    public PlacedSamples.Decoder decoder(double factor) {
        if (kind == 'i' && bytes == Short.BYTES) {
            return Decoders.shorts(factor);
        }
        return kind == 'f' && bytes == Float.BYTES ? Decoders.floats(factor) : Decoders.of(this::value, factor);
    }

    /** The element at a place of a buffer that has this type's byte order. */
    public double value(ByteBuffer buffer, int at) {
        return switch (kind) {
            case 'f' -> floating(buffer, at);
            case 'i' -> (double) signed(buffer, at);
            case 'u' -> unsigned(buffer, at);
            default -> buffer.get(at) == 0 ? 0 : 1;
        };
    }

    private double floating(ByteBuffer buffer, int at) {
        return switch (bytes) {
            case 2 -> Float.float16ToFloat(buffer.getShort(at));
            case 4 -> buffer.getFloat(at);
            default -> buffer.getDouble(at);
        };
    }

    private long signed(ByteBuffer buffer, int at) {
        return switch (bytes) {
            case 1 -> buffer.get(at);
            case 2 -> buffer.getShort(at);
            case 4 -> buffer.getInt(at);
            default -> buffer.getLong(at);
        };
    }

    private double unsigned(ByteBuffer buffer, int at) {
        long value = signed(buffer, at);
        if (bytes < Long.BYTES) {
            return (double) (value & ((1L << (8 * bytes)) - 1));
        }
        return value >= 0 ? (double) value : (double) value + 0x1p64;
    }
}
