// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.OutputFile;

/**
 * Writes a table as an Arrow IPC file, batch after batch, to a stream that is never sought in. The format wants the
 * sizes of a batch's buffers before their content, so content is asked for only when its place is reached: memory
 * depends on neither the number of batches nor the number of rows in one. For one thread.
 */
public final class ArrowFileWriter {
    static final byte[] MAGIC = "ARROW1".getBytes(StandardCharsets.US_ASCII);
    static final int CONTINUATION = -1;
    static final int PREFIX_BYTES = 8;
    /** Every buffer begins at such a place in the file, as the format recommends for fast readers. */
    private static final int ALIGNMENT = 64;

    private final CountingStream out;
    private final List<ArrowField> fields;
    private final Map<String, String> metadata;
    private final List<ArrowMessages.Place> places = new ArrayList<>();

    /**
     * Values of a column, or what a column of texts has beside them.
     *
     * @param bytes how many it has
     * @param content writes exactly as many, little-endian
     */
    public record Buffer(long bytes, OutputFile.Content content) {
        /** Bytes that are there already. */
        public static Buffer of(byte[] bytes) {
            return new Buffer(bytes.length, stream -> stream.write(bytes));
        }
    }

    private ArrowFileWriter(CountingStream out, List<ArrowField> fields, Map<String, String> metadata) {
        this.out = out;
        this.fields = fields;
        this.metadata = metadata;
    }

    /**
     * Starts a file.
     *
     * @param stream gets the file, is buffered and is left open
     * @param fields the columns
     * @param metadata of the whole table, by name
     */
    public static ArrowFileWriter begin(OutputStream stream, List<ArrowField> fields, Map<String, String> metadata)
            throws IOException {
        ArrowFileWriter writer = new ArrowFileWriter(new CountingStream(stream), List.copyOf(fields), metadata);
        writer.out.write(MAGIC);
        writer.out.pad(PREFIX_BYTES);
        writer.message(ArrowMessages.schema(fields, metadata));
        return writer;
    }

    /**
     * Writes a batch of rows.
     *
     * @param rows number of rows
     * @param buffers those of each column, column after column
     */
    public void batch(long rows, List<Buffer> buffers) throws IOException {
        int expected = fields.stream().mapToInt(field -> field.type().buffers()).sum();
        if (buffers.size() != expected) {
            throw new IllegalArgumentException(buffers.size() + " buffers instead of " + expected);
        }
        List<ArrowMessages.Extent> extents = new ArrayList<>();
        long body = 0;
        int next = 0;
        for (ArrowField field : fields) {
            // no validity bits: no value is missing
            extents.add(new ArrowMessages.Extent(body, 0));
            for (int i = 0; i < field.type().buffers(); i++, next++) {
                extents.add(new ArrowMessages.Extent(body, buffers.get(next).bytes()));
                body = aligned(body + buffers.get(next).bytes());
            }
        }
        long start = out.position();
        int metaBytes = message(ArrowMessages.batch(rows, fields.size(), extents, body));
        for (Buffer buffer : buffers) {
            long end = out.position() + buffer.bytes();
            buffer.content().writeTo(out);
            if (out.position() != end) {
                throw new IllegalStateException("a buffer has other than its " + buffer.bytes() + " bytes");
            }
            out.pad(ALIGNMENT);
        }
        places.add(new ArrowMessages.Place(start, metaBytes, body));
    }

    /** Ends the file and leaves the stream open. */
    public void finish() throws IOException {
        out.write(littleEndian(CONTINUATION));
        out.write(littleEndian(0));
        ByteBuffer footer = ArrowMessages.footer(fields, metadata, places);
        int length = footer.remaining();
        out.write(footer.array(), footer.arrayOffset() + footer.position(), length);
        out.write(littleEndian(length));
        out.write(MAGIC);
        out.flush();
    }

    /** Writes a message so that its body begins aligned; tells how many bytes lie before the body. */
    private int message(ByteBuffer message) throws IOException {
        long start = out.position();
        long bodyStart = aligned(start + PREFIX_BYTES + message.remaining());
        int length = (int) (bodyStart - start);
        out.write(littleEndian(CONTINUATION));
        out.write(littleEndian(length - PREFIX_BYTES));
        out.write(message.array(), message.arrayOffset() + message.position(), message.remaining());
        out.pad(ALIGNMENT);
        return length;
    }

    private static long aligned(long position) {
        return (position + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT;
    }

    private static byte[] littleEndian(int value) {
        return ByteBuffer.allocate(Integer.BYTES)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putInt(value)
                .array();
    }

    /** Knows how many bytes went through it. */
    private static final class CountingStream extends OutputStream {
        private final OutputStream stream;
        private long position;

        CountingStream(OutputStream stream) {
            this.stream = stream;
        }

        long position() {
            return position;
        }

        void pad(int alignment) throws IOException {
            int bytes = (int) (Math.ceilDiv(position, (long) alignment) * alignment - position);
            write(new byte[bytes], 0, bytes);
        }

        @Override
        public void write(int value) throws IOException {
            stream.write(value);
            position++;
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            stream.write(bytes, offset, length);
            position += length;
        }

        @Override
        public void flush() throws IOException {
            stream.flush();
        }
    }
}
