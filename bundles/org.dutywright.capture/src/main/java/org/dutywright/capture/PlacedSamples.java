// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Objects;

/**
 * Values that are read where they lie in the file they came from, at equal distances, so that nothing is copied. Reading
 * by position into a buffer that is used again is several times faster than mapping, whose cost is paid for every page.
 * Closing it closes the file.
 */
public final class PlacedSamples implements Samples {
    private static final int BUFFER_BYTES = 1 << 18;
    // read() may be called from any thread, and a direct buffer is far too dear to make for each call
    private static final ThreadLocal<ByteBuffer> BUFFERS =
            ThreadLocal.withInitial(() -> ByteBuffer.allocateDirect(BUFFER_BYTES));

    private final Path file;
    private final FileChannel channel;
    private final long count;
    private final List<Column> columns;

    /** Turns bytes into values. */
    @FunctionalInterface
    public interface Decoder {
        /**
         * Decodes values.
         *
         * @param bytes begin with the first value and have the byte order of the column
         * @param stride bytes from one value to the next
         * @param target receives {@code count} values from {@code offset} on
         */
        void decode(ByteBuffer bytes, int stride, double[] target, int offset, int count);
    }

    /**
     * Where the values of a channel lie.
     *
     * @param firstByte of the first value in the file
     * @param stride bytes from one value to the next
     * @param bytes of one value, at most 8
     * @param order of its bytes
     * @param decoder makes values of them
     */
    public record Column(long firstByte, int stride, int bytes, ByteOrder order, Decoder decoder) {}

    private PlacedSamples(Path file, FileChannel channel, long count, List<Column> columns) {
        this.file = file;
        this.channel = channel;
        this.count = count;
        this.columns = List.copyOf(columns);
    }

    /**
     * Opens a file.
     *
     * @param count number of values of each column, all of which lie in the file
     */
    public static PlacedSamples open(Path file, long count, List<Column> columns) throws IOException {
        return new PlacedSamples(file, FileChannel.open(file, StandardOpenOption.READ), count, columns);
    }

    @Override
    public int channelCount() {
        return columns.size();
    }

    @Override
    public long sampleCount() {
        return count;
    }

    @Override
    public void read(int channel, long firstSample, double[] target, int offset, int wanted) throws IOException {
        Column column = columns.get(channel);
        Objects.checkFromIndexSize(firstSample, wanted, count);
        int most = 1 + Math.max(0, (BUFFER_BYTES - column.bytes()) / column.stride());
        ByteBuffer buffer = BUFFERS.get();
        for (int done = 0; done < wanted; ) {
            int part = Math.min(most, wanted - done);
            buffer.clear().limit((part - 1) * column.stride() + column.bytes());
            fill(buffer, column.firstByte() + (firstSample + done) * column.stride());
            column.decoder().decode(buffer.flip().order(column.order()), column.stride(), target, offset + done, part);
            done += part;
        }
    }

    private void fill(ByteBuffer buffer, long from) throws IOException {
        while (buffer.hasRemaining()) {
            if (channel.read(buffer, from + buffer.position()) < 0) {
                throw new IOException(file + " became shorter while it was open");
            }
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
