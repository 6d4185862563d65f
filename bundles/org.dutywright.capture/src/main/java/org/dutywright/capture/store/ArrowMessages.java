// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import com.google.flatbuffers.FlatBufferBuilder;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Map;
import org.apache.arrow.flatbuf.Block;
import org.apache.arrow.flatbuf.Bool;
import org.apache.arrow.flatbuf.Buffer;
import org.apache.arrow.flatbuf.Endianness;
import org.apache.arrow.flatbuf.Field;
import org.apache.arrow.flatbuf.FieldNode;
import org.apache.arrow.flatbuf.FloatingPoint;
import org.apache.arrow.flatbuf.Footer;
import org.apache.arrow.flatbuf.Int;
import org.apache.arrow.flatbuf.KeyValue;
import org.apache.arrow.flatbuf.Message;
import org.apache.arrow.flatbuf.MessageHeader;
import org.apache.arrow.flatbuf.MetadataVersion;
import org.apache.arrow.flatbuf.Precision;
import org.apache.arrow.flatbuf.RecordBatch;
import org.apache.arrow.flatbuf.Schema;
import org.apache.arrow.flatbuf.Type;
import org.apache.arrow.flatbuf.Utf8;

/** Builds the messages of an Arrow file. */
final class ArrowMessages {
    private static final int INITIAL_BYTES = 1024;
    private static final int NONE = 0;

    private ArrowMessages() {}

    /** Where a buffer lies in the body of its batch. */
    record Extent(long offset, long bytes) {}

    /** Where a batch lies in the file: its message, and the body after it. */
    record Place(long offset, int metaBytes, long bodyBytes) {}

    static ByteBuffer schema(List<ArrowField> fields, Map<String, String> metadata) {
        FlatBufferBuilder builder = new FlatBufferBuilder(INITIAL_BYTES);
        return message(builder, MessageHeader.Schema, schema(builder, fields, metadata), 0);
    }

    static ByteBuffer batch(long rows, int columns, List<Extent> buffers, long bodyBytes) {
        FlatBufferBuilder builder = new FlatBufferBuilder(INITIAL_BYTES);
        // vectors of structures are built from their end
        RecordBatch.startBuffersVector(builder, buffers.size());
        for (int i = buffers.size() - 1; i >= 0; i--) {
            Buffer.createBuffer(builder, buffers.get(i).offset(), buffers.get(i).bytes());
        }
        int buffersVector = builder.endVector();
        RecordBatch.startNodesVector(builder, columns);
        for (int i = 0; i < columns; i++) {
            FieldNode.createFieldNode(builder, rows, 0);
        }
        int nodesVector = builder.endVector();
        int batch = RecordBatch.createRecordBatch(builder, rows, nodesVector, buffersVector, NONE, NONE);
        return message(builder, MessageHeader.RecordBatch, batch, bodyBytes);
    }

    static ByteBuffer footer(List<ArrowField> fields, Map<String, String> metadata, List<Place> places) {
        FlatBufferBuilder builder = new FlatBufferBuilder(INITIAL_BYTES);
        int schema = schema(builder, fields, metadata);
        Footer.startDictionariesVector(builder, 0);
        int dictionaries = builder.endVector();
        Footer.startRecordBatchesVector(builder, places.size());
        for (int i = places.size() - 1; i >= 0; i--) {
            Place place = places.get(i);
            Block.createBlock(builder, place.offset(), place.metaBytes(), place.bodyBytes());
        }
        int batches = builder.endVector();
        builder.finish(Footer.createFooter(builder, MetadataVersion.V5, schema, dictionaries, batches, NONE));
        return builder.dataBuffer();
    }

    private static ByteBuffer message(FlatBufferBuilder builder, byte headerType, int header, long bodyBytes) {
        builder.finish(Message.createMessage(builder, MetadataVersion.V5, headerType, header, bodyBytes, NONE));
        return builder.dataBuffer();
    }

    private static int schema(FlatBufferBuilder builder, List<ArrowField> fields, Map<String, String> metadata) {
        int[] offsets = fields.stream().mapToInt(field -> field(builder, field)).toArray();
        int vector = Schema.createFieldsVector(builder, offsets);
        int keys = keys(builder, metadata);
        return Schema.createSchema(builder, Endianness.Little, vector, keys, NONE);
    }

    private static int field(FlatBufferBuilder builder, ArrowField field) {
        int name = builder.createString(field.name());
        int keys = keys(builder, field.metadata());
        int children = Field.createChildrenVector(builder, new int[0]);
        byte type = switch (field.type()) {
            case INT16, INT64 -> Type.Int;
            case FLOAT32, FLOAT64 -> Type.FloatingPoint;
            case TEXT -> Type.Utf8;
            case BOOL -> Type.Bool;
        };
        int details = details(builder, field.type());
        return Field.createField(builder, name, false, type, details, NONE, children, keys);
    }

    private static int details(FlatBufferBuilder builder, ArrowField.Type type) {
        return switch (type) {
            case INT16 -> Int.createInt(builder, Short.SIZE, true);
            case INT64 -> Int.createInt(builder, Long.SIZE, true);
            case FLOAT32 -> FloatingPoint.createFloatingPoint(builder, Precision.SINGLE);
            case FLOAT64 -> FloatingPoint.createFloatingPoint(builder, Precision.DOUBLE);
            case TEXT -> {
                Utf8.startUtf8(builder);
                yield Utf8.endUtf8(builder);
            }
            case BOOL -> {
                Bool.startBool(builder);
                yield Bool.endBool(builder);
            }
        };
    }

    private static int keys(FlatBufferBuilder builder, Map<String, String> metadata) {
        int[] offsets = metadata.entrySet().stream()
                .mapToInt(entry -> {
                    int key = builder.createString(entry.getKey());
                    int value = builder.createString(entry.getValue());
                    return KeyValue.createKeyValue(builder, key, value);
                })
                .toArray();
        return Schema.createCustomMetadataVector(builder, offsets);
    }
}
