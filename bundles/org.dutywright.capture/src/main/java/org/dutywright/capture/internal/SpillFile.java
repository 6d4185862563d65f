// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.internal;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.DoubleBuffer;
import java.nio.channels.FileChannel;
import org.dutywright.capture.TemporaryFile;

/**
 * A temporary file of doubles, little-endian, of which nothing is left behind: {@link TemporaryFile}. Writing is for one
 * thread, reading for several.
 */
final class SpillFile implements AutoCloseable {
    private static final int BUFFER_VALUES = 1 << 15;
    // read() may be called from any thread, and a direct buffer is far too dear to make for each call
    private static final ThreadLocal<ByteBuffer> BUFFERS = ThreadLocal.withInitial(
            () -> ByteBuffer.allocateDirect(BUFFER_VALUES * Double.BYTES).order(ByteOrder.LITTLE_ENDIAN));

    private final FileChannel channel;

    private SpillFile(FileChannel channel) {
        this.channel = channel;
    }

    static SpillFile create() throws IOException {
        return new SpillFile(TemporaryFile.open());
    }

    /** Writes values from position {@code firstValue} of the file on. */
    void write(long firstValue, double[] values, int count) throws IOException {
        ByteBuffer buffer = BUFFERS.get();
        for (int done = 0; done < count; ) {
            int part = Math.min(BUFFER_VALUES, count - done);
            buffer.clear();
            buffer.asDoubleBuffer().put(values, done, part);
            buffer.limit(part * Double.BYTES);
            long position = (firstValue + done) * Double.BYTES;
            writeFully(buffer, position);
            done += part;
        }
    }

    private void writeFully(ByteBuffer buffer, long start) throws IOException {
        long position = start;
        try {
            while (buffer.hasRemaining()) {
                position += channel.write(buffer, position);
            }
        } catch (IOException e) {
            throw new IOException(
                    System.getProperty("java.io.tmpdir") + ": a temporary file of samples cannot be written there, "
                            + e.getMessage() + "; free space there, or name another folder with -Djava.io.tmpdir",
                    e);
        }
    }

    /** Reads {@code count} values from position {@code firstValue} of the file on. */
    void read(long firstValue, double[] target, int offset, int count) throws IOException {
        ByteBuffer buffer = BUFFERS.get();
        for (int done = 0; done < count; ) {
            int part = Math.min(BUFFER_VALUES, count - done);
            buffer.clear().limit(part * Double.BYTES);
            long position = (firstValue + done) * Double.BYTES;
            while (buffer.hasRemaining()) {
                int bytes = channel.read(buffer, position + buffer.position());
                if (bytes < 0) {
                    throw new EOFException("temporary file of samples ends too early");
                }
            }
            DoubleBuffer doubles = buffer.flip().asDoubleBuffer();
            doubles.get(target, offset + done, part);
            done += part;
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
