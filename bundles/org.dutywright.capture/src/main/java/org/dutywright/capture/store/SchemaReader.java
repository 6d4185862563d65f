// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.apache.arrow.flatbuf.Duration;
import org.apache.arrow.flatbuf.Endianness;
import org.apache.arrow.flatbuf.Field;
import org.apache.arrow.flatbuf.FloatingPoint;
import org.apache.arrow.flatbuf.Int;
import org.apache.arrow.flatbuf.KeyValue;
import org.apache.arrow.flatbuf.Precision;
import org.apache.arrow.flatbuf.Schema;
import org.apache.arrow.flatbuf.Time;
import org.apache.arrow.flatbuf.TimeUnit;
import org.apache.arrow.flatbuf.Timestamp;
import org.apache.arrow.flatbuf.Type;

/** Reads the columns that a file says it has. Nothing is trusted: every count and length is bounded first. */
final class SchemaReader {
    private static final int MOST_COLUMNS = 1000;
    private static final int MOST_KEYS = 10_000;
    private static final int LONGEST_NAME = 4096;
    private static final int LONGEST_KEY = 64;

    private SchemaReader() {}

    /**
     * Reads them.
     *
     * @throws Refusal if there is something that is not read
     * @throws RuntimeException of any kind if the bytes are damaged
     */
    static List<ArrowColumn> columns(Schema schema) {
        if (schema.endianness() != Endianness.Little) {
            throw new Refusal("its numbers are big-endian, which is not read", "write it on another machine");
        }
        int count = schema.fieldsLength();
        if (count > MOST_COLUMNS) {
            throw new Refusal("has " + count + " columns, more than " + MOST_COLUMNS, "write fewer channels");
        }
        List<ArrowColumn> columns = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            columns.add(column(schema.fields(i), i));
        }
        return columns;
    }

    /** The metadata of the schema that are a store's. */
    static Map<String, String> metadata(Schema schema) {
        return keys(schema.customMetadataLength(), schema::customMetadata);
    }

    private static ArrowColumn column(Field field, int index) {
        String name = field.nameAsByteBuffer() == null ? "column " + (index + 1) : text(field.nameAsByteBuffer());
        Map<String, String> metadata = keys(field.customMetadataLength(), field::customMetadata);
        if (field.dictionary() != null) {
            return ArrowColumn.other(name, "dictionary-encoded", 2, false, metadata);
        }
        return switch (field.typeType()) {
            case Type.Int -> ArrowColumn.numbers(name, whole((Int) field.type(new Int())), metadata);
            case Type.FloatingPoint ->
                ArrowColumn.numbers(name, floating((FloatingPoint) field.type(new FloatingPoint())), metadata);
            case Type.Timestamp -> {
                Timestamp type = (Timestamp) field.type(new Timestamp());
                yield ArrowColumn.time(name, NumberType.INT64, seconds(type.unit()), true, metadata);
            }
            case Type.Duration -> {
                Duration type = (Duration) field.type(new Duration());
                yield ArrowColumn.time(name, NumberType.INT64, seconds(type.unit()), false, metadata);
            }
            case Type.Time -> {
                Time type = (Time) field.type(new Time());
                NumberType number = type.bitWidth() == Long.SIZE ? NumberType.INT64 : NumberType.INT32;
                yield ArrowColumn.time(name, number, seconds(type.unit()), false, metadata);
            }
            case Type.Null -> ArrowColumn.other(name, "empty", 0, false, metadata);
            case Type.Bool -> ArrowColumn.other(name, "true or false", 2, false, metadata);
            case Type.Date -> ArrowColumn.other(name, "dates", 2, false, metadata);
            case Type.Decimal -> ArrowColumn.other(name, "decimals", 2, false, metadata);
            case Type.Interval -> ArrowColumn.other(name, "calendar intervals", 2, false, metadata);
            case Type.FixedSizeBinary -> ArrowColumn.other(name, "bytes", 2, false, metadata);
            case Type.Utf8, Type.LargeUtf8 -> ArrowColumn.other(name, "text", 3, false, metadata);
            case Type.Binary, Type.LargeBinary -> ArrowColumn.other(name, "bytes", 3, false, metadata);
            case Type.Utf8View -> ArrowColumn.other(name, "text", 2, true, metadata);
            case Type.BinaryView -> ArrowColumn.other(name, "bytes", 2, true, metadata);
            default ->
                throw new Refusal(
                        "column '" + name + "' is nested (" + typeName(field.typeType()) + "), which is not read",
                        "write the file without it");
        };
    }

    private static String typeName(byte type) {
        return type >= 0 && type < Type.names.length ? Type.name(type) : "type " + type;
    }

    private static NumberType whole(Int type) {
        boolean signed = type.isSigned();
        return switch (type.bitWidth()) {
            case Byte.SIZE -> signed ? NumberType.INT8 : NumberType.UINT8;
            case Short.SIZE -> signed ? NumberType.INT16 : NumberType.UINT16;
            case Integer.SIZE -> signed ? NumberType.INT32 : NumberType.UINT32;
            case Long.SIZE -> signed ? NumberType.INT64 : NumberType.UINT64;
            default -> throw new Refusal("has whole numbers of " + type.bitWidth() + " bits", "write it again");
        };
    }

    private static NumberType floating(FloatingPoint type) {
        return switch (type.precision()) {
            case Precision.HALF -> NumberType.FLOAT16;
            case Precision.SINGLE -> NumberType.FLOAT32;
            case Precision.DOUBLE -> NumberType.FLOAT64;
            default -> throw new Refusal("has floating numbers of unknown precision", "write it again");
        };
    }

    private static double seconds(short unit) {
        return switch (unit) {
            case TimeUnit.SECOND -> 1;
            case TimeUnit.MILLISECOND -> 1e-3;
            case TimeUnit.MICROSECOND -> 1e-6;
            case TimeUnit.NANOSECOND -> 1e-9;
            default -> throw new Refusal("has times of an unknown unit", "write them in seconds");
        };
    }

    private static Map<String, String> keys(int count, IntFunction<KeyValue> entries) {
        if (count > MOST_KEYS) {
            throw new Refusal("has " + count + " entries of metadata, more than " + MOST_KEYS, "write it without");
        }
        Map<String, String> known = new HashMap<>();
        long length = 0;
        for (int i = 0; i < count; i++) {
            KeyValue entry = entries.apply(i);
            ByteBuffer key = entry.keyAsByteBuffer();
            ByteBuffer value = entry.valueAsByteBuffer();
            if (key == null || value == null || key.remaining() > LONGEST_KEY) {
                continue;
            }
            length += value.remaining();
            String name = text(key);
            // several entries may lie in the same bytes; together they would still fill the memory
            if (length <= key.capacity() && StoreMetadata.KEYS.contains(name)) {
                known.putIfAbsent(name, StandardCharsets.UTF_8.decode(value).toString());
            }
        }
        return known;
    }

    private static String text(ByteBuffer bytes) {
        if (bytes.remaining() > LONGEST_NAME) {
            throw new Refusal("has a name of " + bytes.remaining() + " bytes", "write it with shorter names");
        }
        return StandardCharsets.UTF_8.decode(bytes).toString().replaceAll("\\p{Cntrl}", " ");
    }

    /** Something sound that is not read. */
    static final class Refusal extends RuntimeException {
        private static final long serialVersionUID = 1L;
        private final String advice;

        Refusal(String problem, String advice) {
            super(problem);
            this.advice = advice;
        }

        String advice() {
            return advice;
        }
    }
}
