// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.dutywright.capture.Progress;

/**
 * Computes the SHA-256 of the bytes that are read through it, reports them as work, and hears of cancelling. Bytes
 * that are skipped count as read.
 */
public final class DigestStream extends FilterInputStream {
    private final MessageDigest digest;
    private final Progress progress;
    private int lastByte;
    private int byteBefore;

    /**
     * Wraps a stream.
     *
     * @param stream closed by whoever opened it
     * @param progress gets the bytes; a task must have begun
     */
    public DigestStream(InputStream stream, Progress progress) {
        super(stream);
        this.progress = progress;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    @Override
    public int read() throws IOException {
        int value = super.read();
        if (value >= 0) {
            took(new byte[] {(byte) value}, 0, 1);
        }
        return value;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        int count = super.read(bytes, offset, length);
        if (count > 0) {
            took(bytes, offset, count);
        }
        return count;
    }

    private void took(byte[] bytes, int offset, int count) {
        digest.update(bytes, offset, count);
        byteBefore = count > 1 ? bytes[offset + count - 2] : lastByte;
        lastByte = bytes[offset + count - 1];
        progress.worked(count);
        progress.checkCancelled();
    }

    /** Whether the last byte read, or the last two bytes in an encoding of two bytes a character, end a line. */
    public boolean endsWithLineEnd() {
        return isLineEnd(lastByte) || (lastByte == 0 && isLineEnd(byteBefore));
    }

    private static boolean isLineEnd(int value) {
        return value == '\n' || value == '\r';
    }

    @Override
    public long skip(long count) throws IOException {
        return readNBytes((int) Math.min(count, 1 << 16)).length;
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    /** Does nothing: readers close it before its digest is asked for. Whoever opened the file closes that. */
    @Override
    public void close() {}

    /** Reads what is left and gives the digest of all, 64 lower-case hexadecimal digits. */
    public String sha256() throws IOException {
        transferTo(OutputStream.nullOutputStream());
        return HexFormat.of().formatHex(digest.digest());
    }
}
