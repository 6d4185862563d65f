// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Source;
import org.dutywright.capture.UnreadableException;

/**
 * A file read once from its start to its end: counts bytes for messages, reports progress and computes the SHA-256 on
 * the way. Nothing here allocates what a file declares. For one thread.
 */
public final class ByteSource implements AutoCloseable {
    private static final int BUFFER_BYTES = 1 << 16;

    private final Path file;
    private final long sizeBytes;
    private final InputStream opened;
    private final DigestStream digest;
    private final InputStream stream;
    private final byte[] waste = new byte[BUFFER_BYTES];
    private long position;

    private ByteSource(Path file, long sizeBytes, InputStream opened, Progress progress) {
        this.file = file;
        this.sizeBytes = sizeBytes;
        this.opened = opened;
        digest = new DigestStream(opened, progress);
        stream = new BufferedInputStream(digest, BUFFER_BYTES);
    }

    /** Opens a file and begins the task of reading it, in bytes. */
    public static ByteSource open(Path file, Progress progress) throws IOException {
        long size = Files.size(file);
        progress.begin("reading " + file.getFileName(), size);
        return new ByteSource(file, size, Files.newInputStream(file), progress);
    }

    /** The file. */
    public Path file() {
        return file;
    }

    /** Number of bytes read or skipped so far. */
    public long position() {
        return position;
    }

    /** Number of bytes from here to the end, as the file was when it was opened. */
    public long remainingBytes() {
        return Math.max(0, sizeBytes - position);
    }

    /** The next byte as a number from 0 to 255, -1 at the end. */
    public int read() throws IOException {
        int value = stream.read();
        if (value >= 0) {
            position++;
        }
        return value;
    }

    /**
     * Reads as many bytes as there are, at most {@code count}.
     *
     * @return how many; fewer than asked for only at the end of the file
     */
    public int read(byte[] target, int count) throws IOException {
        int done = stream.readNBytes(target, 0, count);
        position += done;
        return done;
    }

    /**
     * Reads bytes that must be there.
     *
     * @param count a small number, never one that the file declares
     * @param what is read, for the message
     * @throws UnreadableException if the file ends before
     */
    public byte[] require(int count, String what) throws UnreadableException, IOException {
        byte[] bytes = new byte[count];
        long start = position;
        if (read(bytes, count) < count) {
            throw unreadable(start, "the file ends inside " + what, "record or copy it again");
        }
        return bytes;
    }

    /** Looks at the next bytes without taking them: at most {@code count}, fewer at the end of the file. */
    public byte[] peek(int count) throws IOException {
        stream.mark(count);
        byte[] bytes = stream.readNBytes(count);
        stream.reset();
        return bytes;
    }

    /** Skips bytes; stops at the end of the file. */
    public void skip(long count) throws IOException {
        for (long left = count; left > 0; ) {
            int done = read(waste, (int) Math.min(waste.length, left));
            if (done == 0) {
                return;
            }
            left -= done;
        }
    }

    /** An exception that names a byte of this file. */
    public UnreadableException unreadable(long at, String problem, String advice) {
        return new UnreadableException(file, "byte " + at, problem, advice);
    }

    /** Everything that is left as a stream; its bytes count. Closing it does nothing. */
    public InputStream asStream() {
        return new CountedStream();
    }

    private final class CountedStream extends InputStream {
        @Override
        public int read() throws IOException {
            return ByteSource.this.read();
        }

        @Override
        public int read(byte[] target, int offset, int count) throws IOException {
            int done = stream.read(target, offset, count);
            position += Math.max(0, done);
            return done;
        }
    }

    /** Reads what is left and tells what was read. */
    public Source source() throws IOException {
        return new Source(file, digest.sha256());
    }

    @Override
    public void close() throws IOException {
        opened.close();
    }
}
