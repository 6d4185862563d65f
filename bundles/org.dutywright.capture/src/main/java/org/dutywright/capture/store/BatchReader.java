// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.List;
import org.apache.arrow.flatbuf.Block;
import org.apache.arrow.flatbuf.Buffer;
import org.apache.arrow.flatbuf.CompressionType;
import org.apache.arrow.flatbuf.Footer;
import org.apache.arrow.flatbuf.Message;
import org.apache.arrow.flatbuf.MessageHeader;
import org.apache.arrow.flatbuf.RecordBatch;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;

/** Reads where the batches of a file and the buffers of its columns lie. */
final class BatchReader {
    private static final int MOST_META_BYTES = 1 << 24;
    private static final int MOST_PLACES = 1_000_000;

    private final Path path;
    private final FileChannel channel;
    private final List<ArrowColumn> columns;
    private final long footerStart;
    private long[] firstRows = new long[0];
    private long[][] values = new long[0][];
    private long[][] validity = new long[0][];

    /** Makes the reader of the batches that lie before a footer. */
    BatchReader(Path path, FileChannel channel, List<ArrowColumn> columns, long footerStart) {
        this.path = path;
        this.channel = channel;
        this.columns = columns;
        this.footerStart = footerStart;
    }

    ArrowBatches read(Footer footer, Progress progress) throws UnreadableException, IOException {
        int count = footer.recordBatchesLength();
        if ((long) count * Math.max(1, columns.size()) > MOST_PLACES) {
            throw new SchemaReader.Refusal("is cut into " + count + " batches, too many", "write it in fewer batches");
        }
        if (count < 0) {
            throw ArrowFile.damaged(path, footerStart, "says that there are " + count + " batches");
        }
        if (count > 0) {
            // the last one is asked for before anything is allocated: the footer must be long enough for all
            footer.recordBatches(count - 1).bodyLength();
        }
        firstRows = new long[count + 1];
        values = new long[columns.size()][count];
        validity = new long[columns.size()][count];
        long end = ArrowFileWriter.PREFIX_BYTES;
        for (int i = 0; i < count; i++) {
            progress.checkCancelled();
            Block block = footer.recordBatches(i);
            long offset = block.offset();
            int meta = block.metaDataLength();
            long body = block.bodyLength();
            // one after another: else a small file could hold the same rows over and over
            if (offset < end
                    || meta < ArrowFileWriter.PREFIX_BYTES
                    || meta > MOST_META_BYTES
                    || body < 0
                    || offset > footerStart - meta
                    || body > footerStart - meta - offset) {
                throw ArrowFile.damaged(
                        path,
                        footerStart,
                        "says that batch " + (i + 1) + " lies at byte " + offset + " with " + meta + " + " + body
                                + " bytes");
            }
            end = offset + meta + body;
            readBatch(i, offset, meta, body);
        }
        return new ArrowBatches(firstRows, values, validity);
    }

    private void readBatch(int index, long offset, int meta, long body) throws UnreadableException, IOException {
        ByteBuffer bytes =
                ByteBuffer.wrap(ArrowFile.bytes(channel, offset, meta)).order(ByteOrder.LITTLE_ENDIAN);
        // before version 0.15 of the library there was no mark before the length
        int prefix = bytes.getInt(0) == ArrowFileWriter.CONTINUATION ? 2 * Integer.BYTES : Integer.BYTES;
        int length = bytes.getInt(prefix - Integer.BYTES);
        if (length <= 0 || length > meta - prefix) {
            throw ArrowFile.damaged(path, offset, "says that the message there has " + length + " bytes");
        }
        ByteBuffer message = bytes.slice(prefix, length);
        firstRows[index + 1] = ArrowFile.parsed(path, offset, () -> Message.getRootAsMessage(message), found -> {
            if (found.headerType() != MessageHeader.RecordBatch || found.bodyLength() > body) {
                throw ArrowFile.damaged(path, offset, "holds no batch of rows");
            }
            RecordBatch batch = (RecordBatch) found.header(new RecordBatch());
            return take(index, batch, offset, offset + meta, body);
        });
    }

    private long take(int index, RecordBatch batch, long offset, long bodyStart, long body) throws UnreadableException {
        if (batch.compression() != null) {
            throw new SchemaReader.Refusal(
                    "is compressed (" + codec(batch.compression().codec()) + "), which is not read",
                    "write it without compression, in Python with compression='uncompressed'");
        }
        long rows = batch.length();
        if (rows < 0 || rows > Long.MAX_VALUE - firstRows[index] || batch.nodesLength() != columns.size()) {
            throw ArrowFile.damaged(
                    path, offset, "says that " + rows + " rows of " + batch.nodesLength() + " columns follow");
        }
        int next = 0;
        int views = 0;
        long taken = 0;
        for (int i = 0; i < columns.size(); i++) {
            ArrowColumn column = columns.get(i);
            if (column.number().isPresent()) {
                Buffer bits = batch.buffers(next);
                Buffer data = batch.buffers(next + 1);
                long missing = batch.nodes(i).nullCount();
                long bitBytes = missing == 0 ? 0 : Math.ceilDiv(rows, (long) Byte.SIZE);
                if (batch.nodes(i).length() != rows || missing < 0 || missing > rows) {
                    throw ArrowFile.damaged(path, offset, "counts the rows of '" + column.name() + "' otherwise");
                }
                validity[i][index] = missing == 0 ? ArrowBatches.NONE : bodyStart + bits.offset();
                taken = missing == 0 ? taken : checked(column, bits, bitBytes, taken, body, offset);
                long dataBytes = Math.multiplyExact(rows, column.number().get().bytes());
                taken = checked(column, data, dataBytes, taken, body, offset);
                values[i][index] = bodyStart + data.offset();
            }
            next += column.buffers();
            if (column.view()) {
                next = Math.toIntExact(next + batch.variadicBufferCounts(views++));
            }
        }
        return firstRows[index] + rows;
    }

    /** The end of a buffer that lies after the ones before and within the body. */
    private long checked(ArrowColumn column, Buffer buffer, long needed, long taken, long body, long offset)
            throws UnreadableException {
        long start = buffer.offset();
        boolean within = start >= taken && start <= body && needed <= buffer.length() && needed <= body - start;
        if (!within) {
            throw ArrowFile.damaged(
                    path,
                    offset,
                    "has " + buffer.length() + " bytes from " + start + " on for '" + column.name() + "', " + needed
                            + " are needed");
        }
        return start + needed;
    }

    private static String codec(byte codec) {
        return codec >= 0 && codec < CompressionType.names.length ? CompressionType.name(codec) : "codec " + codec;
    }
}
