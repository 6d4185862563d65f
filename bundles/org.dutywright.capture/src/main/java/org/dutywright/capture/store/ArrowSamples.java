// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.dutywright.capture.BlockExtremes;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.Samples;

/**
 * Columns of an Arrow file, read where they lie. Reading by position into a buffer that is used again is several
 * times faster than mapping, whose cost is paid for every page. Closing it closes the file.
 */
final class ArrowSamples implements Samples {
    private static final int BUFFER_BYTES = 1 << 18;
    // read() may be called from any thread, and a direct buffer is far too dear to make for each call
    private static final ThreadLocal<ByteBuffer> BUFFERS = ThreadLocal.withInitial(
            () -> ByteBuffer.allocateDirect(BUFFER_BYTES).order(ByteOrder.LITTLE_ENDIAN));

    private final ArrowFile file;
    private final List<Column> columns;
    private final List<Optional<BlockExtremes>> extremes;

    /**
     * A column that is read.
     *
     * @param index in the file
     * @param scale what its numbers stand for, if they are counts
     */
    record Column(int index, Optional<CountScale> scale) {}

    /** Takes columns of numbers of a file without missing values among them. */
    ArrowSamples(ArrowFile file, List<Column> columns, List<Optional<BlockExtremes>> extremes) {
        this.file = file;
        this.extremes = List.copyOf(extremes);
        this.columns = List.copyOf(columns);
    }

    /** One column as it is. */
    static ArrowSamples of(ArrowFile file, int index) {
        return new ArrowSamples(file, List.of(new Column(index, Optional.empty())), List.of(Optional.empty()));
    }

    @Override
    public int channelCount() {
        return columns.size();
    }

    @Override
    public long sampleCount() {
        return file.batches().rows();
    }

    @Override
    public void read(int channel, long firstSample, double[] target, int offset, int count) throws IOException {
        Column column = columns.get(channel);
        Objects.checkFromIndexSize(firstSample, count, sampleCount());
        ArrowBatches batches = file.batches();
        for (int done = 0; done < count; ) {
            long row = firstSample + done;
            int batch = batches.of(row);
            int part = (int) Math.min(count - done, batches.endRow(batch) - row);
            readPart(column.index(), batch, row - batches.firstRow(batch), target, offset + done, part);
            done += part;
        }
        column.scale().ifPresent(scale -> scale(scale, target, offset, count));
    }

    /** Makes values of counts, in place. */
    static void scale(CountScale known, double[] target, int offset, int count) {
        double scale = known.scale();
        double shift = known.offset();
        for (int i = offset; i < offset + count; i++) {
            target[i] = target[i] * scale + shift;
        }
    }

    private void readPart(int column, int batch, long rowInBatch, double[] target, int offset, int count)
            throws IOException {
        NumberType type = file.columns().get(column).number().orElseThrow();
        long start = file.batches().values(column, batch) + rowInBatch * type.bytes();
        int most = BUFFER_BYTES / type.bytes();
        ByteBuffer buffer = BUFFERS.get();
        for (int done = 0; done < count; ) {
            int part = Math.min(most, count - done);
            buffer.clear().limit(part * type.bytes());
            ArrowFile.readFully(file.channel(), start + (long) done * type.bytes(), buffer);
            buffer.flip();
            type.read(buffer, target, offset + done, part);
            done += part;
        }
    }

    @Override
    public Optional<CountScale> counts(int channel) {
        return columns.get(channel).scale();
    }

    @Override
    public Optional<BlockExtremes> extremes(int channel) {
        return extremes.get(channel);
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
