// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import org.dutywright.capture.formats.internal.ElementType;

/** A dataset whose elements lie one after the other, read by position. */
final class PlainArray extends TypedArray {
    private static final int MOST_BLOCK_BYTES = 1 << 18;

    private final FileChannel channel;
    private final long start;
    private final long heldRows;

    /**
     * Makes it.
     *
     * @param start byte of the file where its elements begin
     */
    PlainArray(String path, ElementType type, Shape shape, FileChannel channel, long start) throws IOException {
        super(path, type, shape);
        this.channel = channel;
        this.start = start;
        long elements = start < 0 ? 0 : Math.max(0, channel.size() - start) / type.bytes();
        boolean whole = shape.columns() == 1 || shape.rowsTogether() || elements / shape.columns() >= shape.rows();
        heldRows = whole ? Math.min(shape.rows(), elements / shape.columns()) : 0;
    }

    @Override
    public long heldRows() {
        return heldRows;
    }

    @Override
    public void read(long firstRow, int count, double[][] target) throws IOException {
        int most = Math.max(1, MOST_BLOCK_BYTES / type.bytes() / (shape.rowsTogether() ? shape.columns() : 1));
        for (int done = 0; done < count; done += most) {
            int here = Math.min(most, count - done);
            if (shape.rowsTogether()) {
                ByteBuffer bytes = block(shape.index(firstRow + done, 0), here * shape.columns());
                for (int i = 0, at = 0; i < here; i++) {
                    for (int column = 0; column < shape.columns(); column++, at += type.bytes()) {
                        target[column][done + i] = type.value(bytes, at);
                    }
                }
            } else {
                for (int column = 0; column < shape.columns(); column++) {
                    ByteBuffer bytes = block(shape.index(firstRow + done, column), here);
                    for (int i = 0; i < here; i++) {
                        target[column][done + i] = type.value(bytes, i * type.bytes());
                    }
                }
            }
        }
    }

    private ByteBuffer block(long firstElement, int elements) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(elements * type.bytes()).order(type.order());
        long from = start + firstElement * type.bytes();
        while (bytes.hasRemaining()) {
            if (channel.read(bytes, from + bytes.position()) < 0) {
                throw new IOException("the file became shorter while it was read");
            }
        }
        return bytes;
    }
}
