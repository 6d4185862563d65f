// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.mat;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.util.zip.DataFormatException;
import us.hebi.matlab.mat.types.Source;

/**
 * Bytes as the library asks for them. The library allocates what a tag declares before it reads on, so every tag is checked
 * as it passes by: its element must lie within the source, and what it keeps on the heap, all but the elements of arrays,
 * must be small.
 */
final class MatSource implements Source {
    private static final int WINDOW_BYTES = 1 << 14;
    private static final int MOST_AT_ONCE = 1 << 20;
    private static final int MOST_HEAD_BYTES = 1 << 20;
    private static final int TAGS_OF_HEAD = 3;
    private static final int MATRIX = 14;
    private static final int COMPRESSED = 15;
    private static final int FIRST_CLASS_OF_ELEMENTS = 4;
    private static final int LAST_CLASS_OF_ELEMENTS = 15;

    private final MatInput input;
    private final FileChannel channel;
    private final long start;
    private final long end;
    private final long packedAt;
    private final ByteBuffer window = ByteBuffer.allocate(WINDOW_BYTES);
    private long windowAt = -1;
    private long position;
    private boolean sizeFollows;
    private int type;
    private int tagsOfArray = TAGS_OF_HEAD;
    private boolean hasElements;

    /**
     * Makes it.
     *
     * @param start first byte in the channel
     * @param end one after the last
     * @param packedAt for messages, where the packed bytes lie in the file; negative if these are those of the file
     */
    MatSource(MatInput input, FileChannel channel, long start, long end, long packedAt) {
        this.input = input;
        this.channel = channel;
        this.start = start;
        this.end = end;
        this.packedAt = packedAt;
        position = start;
    }

    @Override
    public MatSource order(ByteOrder byteOrder) {
        window.order(byteOrder);
        return this;
    }

    @Override
    public ByteOrder order() {
        return window.order();
    }

    @Override
    public long getPosition() {
        return position - start;
    }

    /** The next bytes, at most as many as the window holds, from its position on. */
    private ByteBuffer take(int count) throws IOException {
        input.at(packedAt < 0 ? position : packedAt);
        if (count > end - position) {
            boolean within = position < end && packedAt < 0;
            if (within) {
                input.refused("the file is cut off inside a variable", "copy it again");
            }
            throw new EOFException();
        }
        if (windowAt < 0 || position < windowAt || position + count > windowAt + window.limit()) {
            window.clear().limit((int) Math.min(WINDOW_BYTES, end - position));
            readFully(window, position);
            windowAt = position;
        }
        window.position((int) (position - windowAt));
        position += count;
        return window;
    }

    private void readFully(ByteBuffer target, long from) throws IOException {
        int first = target.position();
        int last = target.limit();
        while (target.hasRemaining()) {
            input.checkCancelled();
            int count;
            try {
                target.limit(Math.min(last, target.position() + MOST_AT_ONCE));
                count = channel.read(target, from + target.position() - first);
                target.limit(last);
            } catch (IOException e) {
                throw input.failed(e);
            }
            if (count < 0) {
                throw input.refused("the file became shorter while it was read");
            }
        }
    }

    @Override
    public int readInt() throws IOException {
        int value = take(Integer.BYTES).getInt();
        if (sizeFollows) {
            sizeFollows = false;
            checkSize(value);
        } else if (value >>> 16 == 0) {
            type = value;
            sizeFollows = true;
        } else {
            type = value & 0xFFFF;
            if (value >> 16 < 0 || value >> 16 > Integer.BYTES) {
                throw input.refused("a short element declares " + (value >> 16) + " bytes");
            }
            tagsOfArray++;
        }
        return value;
    }

    private void checkSize(int size) throws IOException {
        if (size < 0) {
            throw input.refused("a variable of 2 GiB or more", "save it with -v7.3");
        }
        if (size > end - position) {
            boolean file = packedAt < 0;
            throw input.refused(
                    file
                            ? "the file is cut off: an element declares " + size + " bytes"
                            : "an element declares " + size + " bytes, more than its variable has",
                    file ? "copy it again" : "save it again");
        }
        tagsOfArray = type == MATRIX ? 0 : tagsOfArray + 1;
        hasElements &= type != MATRIX;
        boolean onHeap = type != MATRIX && type != COMPRESSED && (tagsOfArray <= TAGS_OF_HEAD || !hasElements);
        if (onHeap && size > MOST_HEAD_BYTES) {
            throw input.refused("names and dimensions take " + size + " bytes");
        }
    }

    @Override
    public void readInts(int[] target, int offset, int length) throws IOException {
        for (int i = 0; i < length; i++) {
            target[offset + i] = take(Integer.BYTES).getInt();
        }
        if (tagsOfArray == 1 && length == 2) {
            int ofClass = target[offset] & 0xFF;
            hasElements = ofClass >= FIRST_CLASS_OF_ELEMENTS && ofClass <= LAST_CLASS_OF_ELEMENTS;
        }
    }

    @Override
    public byte readByte() throws IOException {
        return take(1).get();
    }

    @Override
    public void readBytes(byte[] target, int offset, int length) throws IOException {
        for (int done = 0; done < length; ) {
            int here = Math.min(WINDOW_BYTES, length - done);
            take(here).get(target, offset + done, here);
            done += here;
        }
    }

    @Override
    public short readShort() throws IOException {
        return take(Short.BYTES).getShort();
    }

    @Override
    public void readShorts(short[] target, int offset, int length) throws IOException {
        for (int i = 0; i < length; i++) {
            target[offset + i] = readShort();
        }
    }

    @Override
    public long readLong() throws IOException {
        return take(Long.BYTES).getLong();
    }

    @Override
    public void readLongs(long[] target, int offset, int length) throws IOException {
        for (int i = 0; i < length; i++) {
            target[offset + i] = readLong();
        }
    }

    @Override
    public float readFloat() throws IOException {
        return take(Float.BYTES).getFloat();
    }

    @Override
    public void readFloats(float[] target, int offset, int length) throws IOException {
        for (int i = 0; i < length; i++) {
            target[offset + i] = readFloat();
        }
    }

    @Override
    public double readDouble() throws IOException {
        return take(Double.BYTES).getDouble();
    }

    @Override
    public void readDoubles(double[] target, int offset, int length) throws IOException {
        for (int i = 0; i < length; i++) {
            target[offset + i] = readDouble();
        }
    }

    @Override
    public void readByteBuffer(ByteBuffer buffer) throws IOException {
        int count = buffer.remaining();
        if (count > end - position) {
            throw new EOFException();
        }
        readFully(buffer, position);
        position += count;
    }

    @Override
    public void skip(long numBytes) throws IOException {
        if (numBytes > end - position) {
            throw new EOFException();
        }
        position += Math.max(0, numBytes);
    }

    @Override
    public Source readInflated(int numBytes, int inflateBufferSize) throws IOException {
        if (packedAt >= 0) {
            throw input.refused("packed bytes within packed bytes");
        }
        long from = position;
        long unpackedAt = input.spill().end();
        try {
            if (!input.spill().inflate(channel, from, numBytes, input)) {
                throw input.refused("the file unpacks to far more than it takes packed");
            }
        } catch (DataFormatException e) {
            throw input.refused("a variable cannot be unpacked");
        }
        position += numBytes;
        return new MatSource(
                        input,
                        input.spill().channel(),
                        unpackedAt,
                        input.spill().end(),
                        from)
                .order(order());
    }

    @Override
    public boolean isMutatedByChildren() {
        return true;
    }

    @Override
    public void close() {
        // whoever opened the channels closes them
    }
}
