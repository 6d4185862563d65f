// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.mat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.dutywright.capture.TemporaryFile;
import us.hebi.matlab.mat.format.BufferAllocator;

/**
 * Room for variables in a temporary file that the system deletes with its last handle: unpacked ones, and the buffers that
 * the library asks for. What a file may take there is limited by its size.
 */
final class MatSpill implements BufferAllocator, AutoCloseable {
    private static final int SMALL_BYTES = 1 << 12;
    private static final int BLOCK_BYTES = 1 << 16;
    // deflate packs at most 1032:1; recordings that pack better than this hold nothing worth measuring
    private static final long MOST_TIMES = 200;
    private static final long ALWAYS_BYTES = 64L << 20;

    private final FileChannel channel;
    private final long limit;
    private long end;
    private long unpacked;
    private long allocated;

    private MatSpill(FileChannel channel, long fileBytes) {
        this.channel = channel;
        limit = Math.max(ALWAYS_BYTES, MOST_TIMES * fileBytes);
    }

    /** Makes room for a file of so many bytes. */
    static MatSpill open(long fileBytes) throws IOException {
        return new MatSpill(TemporaryFile.open(), fileBytes);
    }

    FileChannel channel() {
        return channel;
    }

    /** Where the next unpacked byte goes. */
    long end() {
        return end;
    }

    /**
     * Unpacks.
     *
     * @param source the file
     * @param from first packed byte
     * @param bytes number of packed bytes
     * @param input hears of cancelling
     * @return whether all was unpacked; false if it grows beyond the limit
     * @throws DataFormatException if it cannot be unpacked
     */
    boolean inflate(FileChannel source, long from, int bytes, MatInput input) throws DataFormatException, IOException {
        Inflater inflater = new Inflater();
        ByteBuffer in = ByteBuffer.allocate(BLOCK_BYTES);
        ByteBuffer out = ByteBuffer.allocate(BLOCK_BYTES);
        try {
            for (long at = from, last = from + bytes; !inflater.finished(); ) {
                input.checkCancelled();
                if (inflater.needsInput()) {
                    in.clear().limit((int) Math.min(BLOCK_BYTES, last - at));
                    int count = in.hasRemaining() ? source.read(in, at) : -1;
                    if (count < 0) {
                        throw new DataFormatException("ends too early");
                    }
                    at += count;
                    inflater.setInput(in.flip());
                }
                out.clear();
                int count = inflater.inflate(out);
                if (count == 0 && inflater.needsDictionary()) {
                    throw new DataFormatException("needs a dictionary");
                }
                unpacked += count;
                if (unpacked > limit) {
                    return false;
                }
                write(out.flip());
            }
            return true;
        } finally {
            inflater.end();
        }
    }

    private void write(ByteBuffer bytes) throws IOException {
        while (bytes.hasRemaining()) {
            end += channel.write(bytes, end);
        }
    }

    @Override
    public ByteBuffer allocate(int numBytes) {
        allocated += Math.max(0, numBytes);
        if (numBytes < 0 || allocated > 2 * limit) {
            throw new IllegalArgumentException("no room for " + numBytes + " bytes");
        }
        if (numBytes <= SMALL_BYTES) {
            return ByteBuffer.allocate(numBytes);
        }
        try {
            ByteBuffer room = channel.map(FileChannel.MapMode.READ_WRITE, end, numBytes);
            end += numBytes;
            return room;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void release(ByteBuffer buffer) {
        // the file goes as a whole
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
