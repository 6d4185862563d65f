// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import io.jhdf.dataset.chunked.Chunk;
import io.jhdf.dataset.chunked.ChunkOffset;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Map;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ElementType;

/**
 * A dataset in chunks. It is read along the samples; the chunks side by side at one place are kept, one for each column of
 * chunks.
 */
final class ChunkedArray extends TypedArray {
    private final HdfStorage storage;
    private final Map<ChunkOffset, Chunk> chunks;
    private final int chunkRows;
    private final int chunkColumns;
    private final int chunkBytes;
    private final Unpacking unpacking;
    private final Budget budget;
    private final long heldRows;
    private ByteBuffer[] band = {};
    private long bandAt = -1;

    /**
     * Makes it.
     *
     * @param lengths of a chunk in each dimension, whose product is a small number of bytes
     */
    ChunkedArray(
            HdfStorage storage,
            String path,
            ElementType type,
            Shape shape,
            int[] lengths,
            Map<ChunkOffset, Chunk> chunks,
            Unpacking unpacking,
            Budget budget) {
        super(path, type, shape);
        this.storage = storage;
        this.chunks = chunks;
        this.unpacking = unpacking;
        this.budget = budget;
        int second = lengths.length == 2 ? lengths[1] : 1;
        chunkRows = shape.rowsTogether() ? lengths[0] : second;
        chunkColumns = shape.rowsTogether() ? second : lengths[0];
        chunkBytes = lengths[0] * second * type.bytes();
        heldRows = Math.min(shape.rows(), firstMissing() * chunkRows);
    }

    /** Chunks that were never written end a recording: what comes later is far away at best. */
    private long firstMissing() {
        long bands = (shape.rows() + chunkRows - 1) / chunkRows;
        for (long at = 0; at < bands; at++) {
            for (int side = 0; side < sides(); side++) {
                Chunk chunk = chunks.get(offset(at, side));
                if (chunk == null || chunk.getAddress() < 0) {
                    return at;
                }
            }
        }
        return bands;
    }

    private int sides() {
        return (shape.columns() + chunkColumns - 1) / chunkColumns;
    }

    private ChunkOffset offset(long at, int side) {
        long row = at * chunkRows;
        long column = (long) side * chunkColumns;
        if (shape.dimensions() == 1) {
            return new ChunkOffset(new long[] {row});
        }
        return new ChunkOffset(shape.rowsTogether() ? new long[] {row, column} : new long[] {column, row});
    }

    @Override
    public long heldRows() {
        return heldRows;
    }

    @Override
    public void read(long firstRow, int count, double[][] target) throws UnreadableException, IOException {
        for (int done = 0; done < count; ) {
            long row = firstRow + done;
            load(row / chunkRows);
            int from = (int) (row % chunkRows);
            int here = Math.min(count - done, chunkRows - from);
            for (int column = 0; column < shape.columns(); column++) {
                copy(column, from, here, target[column], done);
            }
            done += here;
        }
    }

    private void copy(int column, int from, int count, double[] target, int at) {
        ByteBuffer bytes = band[column / chunkColumns];
        int inside = column % chunkColumns;
        int step = (shape.rowsTogether() ? chunkColumns : 1) * type.bytes();
        int first = shape.rowsTogether() ? inside * type.bytes() : inside * chunkRows * type.bytes();
        for (int i = 0; i < count; i++) {
            target[at + i] = type.value(bytes, first + (from + i) * step);
        }
    }

    private void load(long at) throws UnreadableException, IOException {
        if (at == bandAt) {
            return;
        }
        if (band.length == 0) {
            budget.hold((long) sides() * chunkBytes, new ChunkPlace(storage.file(), 0, path));
            band = new ByteBuffer[sides()];
        }
        bandAt = -1;
        for (int side = 0; side < band.length; side++) {
            band[side] = ByteBuffer.wrap(unpacked(chunks.get(offset(at, side)))).order(type.order());
        }
        bandAt = at;
    }

    private byte[] unpacked(Chunk chunk) throws UnreadableException, IOException {
        long from = storage.byteOf(chunk.getAddress());
        ChunkPlace place = new ChunkPlace(storage.file(), from, path);
        int packed = chunk.getSize();
        // what cannot be packed grows a little
        if (packed < 0 || packed > chunkBytes + chunkBytes / 8 + 1024) {
            throw place.broken("a chunk declares " + packed + " bytes where it holds " + chunkBytes);
        }
        if (packed > storage.size() - from) {
            throw place.broken("a chunk lies beyond the end of the file");
        }
        byte[] bytes = new byte[packed];
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
            if (storage.getFileChannel().read(buffer, from + buffer.position()) < 0) {
                throw new IOException("the file became shorter while it was read");
            }
        }
        byte[] data = unpacking.unpack(bytes, chunk.getFilterMask(), chunkBytes, place);
        budget.unpacked(data.length, place);
        return data;
    }
}
