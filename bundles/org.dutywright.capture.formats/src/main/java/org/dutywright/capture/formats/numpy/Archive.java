// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.numpy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import org.dutywright.capture.TemporaryFile;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/**
 * The arrays of an archive, unpacked one after the other into a temporary file that the system deletes with its last
 * handle.
 */
final class Archive implements AutoCloseable {
    private static final int MOST_ARRAYS = 1000;
    private static final int LONGEST_NAME = 200;
    private static final int BLOCK_BYTES = 1 << 16;
    // deflate packs at most 1032:1; arrays that pack better than this hold nothing worth measuring
    private static final long MOST_TIMES = 200;
    private static final long ALWAYS_BYTES = 64L << 20;

    private final FileChannel channel;
    private final Map<String, Extent> arrays = new LinkedHashMap<>();

    /**
     * Where an array lies in the temporary file.
     *
     * @param start its first byte
     * @param bytes their number
     */
    record Extent(long start, long bytes) {}

    private Archive(FileChannel channel) {
        this.channel = channel;
    }

    /** Unpacks. */
    static Archive unpack(ByteSource source) throws UnreadableException, IOException {
        Archive archive = new Archive(TemporaryFile.open());
        boolean done = false;
        try {
            archive.fill(source);
            done = true;
            return archive;
        } finally {
            if (!done) {
                archive.close();
            }
        }
    }

    private void fill(ByteSource source) throws UnreadableException, IOException {
        long limit = Math.max(ALWAYS_BYTES, MOST_TIMES * source.remainingBytes());
        ZipInputStream zip = new ZipInputStream(source.asStream());
        long end = 0;
        while (true) {
            ZipEntry entry = next(zip, source);
            if (entry == null) {
                return;
            }
            String name = name(entry, source);
            if (arrays.size() == MOST_ARRAYS || arrays.containsKey(name)) {
                throw broken(source, arrays.size() == MOST_ARRAYS ? "more than 1000 arrays" : "an array twice");
            }
            long start = end;
            end = copy(zip, source, end, limit);
            arrays.put(name, new Extent(start, end - start));
        }
    }

    private static ZipEntry next(ZipInputStream zip, ByteSource source) throws UnreadableException, IOException {
        try {
            return zip.getNextEntry();
        } catch (ZipException | java.io.EOFException | IllegalArgumentException e) {
            throw broken(source, "an entry that cannot be unpacked");
        }
    }

    private static String name(ZipEntry entry, ByteSource source) throws UnreadableException {
        String name = entry.getName();
        boolean path = name.contains("/") || name.contains("\\") || name.contains(":") || name.startsWith(".");
        if (path || name.length() > LONGEST_NAME || name.chars().anyMatch(Character::isISOControl)) {
            throw broken(source, "an entry whose name is none of an array");
        }
        return name.endsWith(".npy") ? name.substring(0, name.length() - 4) : name;
    }

    private long copy(ZipInputStream zip, ByteSource source, long start, long limit)
            throws UnreadableException, IOException {
        byte[] block = new byte[BLOCK_BYTES];
        long end = start;
        while (true) {
            int count = readBlock(zip, block, source);
            if (count < 0) {
                return end;
            }
            if (end + count > limit) {
                throw broken(source, "more than " + limit + " bytes once unpacked, far more than it takes packed");
            }
            ByteBuffer buffer = ByteBuffer.wrap(block, 0, count);
            while (buffer.hasRemaining()) {
                end += channel.write(buffer, end);
            }
        }
    }

    private static int readBlock(ZipInputStream zip, byte[] block, ByteSource source)
            throws UnreadableException, IOException {
        try {
            return zip.read(block, 0, block.length);
        } catch (ZipException | java.io.EOFException e) {
            throw broken(source, "an entry that cannot be unpacked");
        }
    }

    private static UnreadableException broken(ByteSource source, String what) {
        return source.unreadable(source.position(), "the archive holds " + what, "save it again with numpy.savez");
    }

    FileChannel channel() {
        return channel;
    }

    /** The arrays by name, in the order of the archive. */
    Map<String, Extent> arrays() {
        return arrays;
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
