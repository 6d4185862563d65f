// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.dutywright.capture.store.ArrowFileWriter.Buffer;
import org.dutywright.pulse.Cycle;

/** Cycles of one channel, column by column as an Arrow file wants them. */
public final class CycleBatch {
    private static final int NUMBERS = 6;

    private final byte[] name;
    private final int capacity;
    private final ByteBuffer nameEnds;
    private final ByteBuffer indices;
    private final List<ByteBuffer> numbers;
    private final byte[] disturbed;
    private int count;

    /** Makes an empty batch of cycles of a channel. */
    public CycleBatch(String channel, int capacity) {
        name = channel.getBytes(StandardCharsets.UTF_8);
        // the texts of a batch are addressed with 32 bits
        this.capacity = Math.clamp(capacity, 1, Integer.MAX_VALUE / (name.length + 1));
        nameEnds = column(Integer.BYTES, this.capacity + 1);
        nameEnds.putInt(0);
        indices = column(Long.BYTES, this.capacity);
        numbers = Stream.generate(() -> column(Double.BYTES, this.capacity))
                .limit(NUMBERS)
                .toList();
        disturbed = new byte[Math.ceilDiv(this.capacity, Byte.SIZE)];
    }

    private static ByteBuffer column(int bytes, int values) {
        return ByteBuffer.allocate(bytes * values).order(ByteOrder.LITTLE_ENDIAN);
    }

    /** Number of cycles. */
    public int count() {
        return count;
    }

    /** Whether no cycle can be added. */
    public boolean isFull() {
        return count == capacity;
    }

    /** Adds a cycle. */
    public void add(Cycle cycle) {
        double[] row = {
            cycle.startSeconds(),
            cycle.periodSeconds(),
            cycle.frequencyHz(),
            cycle.pulseDurationSeconds(),
            cycle.dutyPercent(),
            cycle.mean()
        };
        for (int i = 0; i < NUMBERS; i++) {
            if (!Double.isFinite(row[i])) {
                throw new IllegalStateException("a cycle has the number " + row[i]);
            }
            numbers.get(i).putDouble(row[i]);
        }
        indices.putLong(cycle.index());
        if (cycle.disturbed()) {
            disturbed[count / Byte.SIZE] |= (byte) (1 << (count % Byte.SIZE));
        }
        count++;
        nameEnds.putInt(count * name.length);
    }

    /** The buffers of all columns, in their order. */
    public List<Buffer> buffers() {
        List<Buffer> buffers = new ArrayList<>();
        buffers.add(filled(nameEnds));
        buffers.add(new Buffer((long) count * name.length, stream -> {
            for (int i = 0; i < count; i++) {
                stream.write(name);
            }
        }));
        buffers.add(filled(indices));
        numbers.forEach(column -> buffers.add(filled(column)));
        int bytes = Math.ceilDiv(count, Byte.SIZE);
        buffers.add(new Buffer(bytes, stream -> stream.write(disturbed, 0, bytes)));
        return buffers;
    }

    private static Buffer filled(ByteBuffer column) {
        return new Buffer(
                column.position(), stream -> stream.write(column.array(), column.arrayOffset(), column.position()));
    }
}
