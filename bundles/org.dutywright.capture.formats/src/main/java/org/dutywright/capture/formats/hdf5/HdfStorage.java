// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import io.jhdf.Superblock;
import io.jhdf.exceptions.HdfException;
import io.jhdf.exceptions.UnsupportedHdfException;
import io.jhdf.storage.HdfBackingStorage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.dutywright.capture.UnreadableException;

/**
 * The file as the library sees it. The library believes what it reads; here every piece that it asks for must lie inside
 * the file and be small, none is read over and over, and counts that it would make room for are checked as they pass by.
 */
final class HdfStorage implements HdfBackingStorage {
    private static final int MOST_PIECE_BYTES = 16 << 20;
    private static final int MOST_READS_OF_ONE_PIECE = 200;
    private static final long ALWAYS_BYTES = 16L << 20;
    private static final int MOST_PIECES = 1_000_000;

    private final Path file;
    private final FileChannel channel;
    private final Superblock superblock;
    private final long size;
    private final Map<Long, Integer> reads = new HashMap<>();
    private long handedOut;
    private long lastAddress;
    private String problem = "";

    private HdfStorage(Path file, FileChannel channel, Superblock superblock, long size) {
        this.file = file;
        this.channel = channel;
        this.superblock = superblock;
        this.size = size;
    }

    /**
     * Opens.
     *
     * @param offset of the signature in the file
     */
    static HdfStorage open(Path file, FileChannel channel, long offset) throws UnreadableException, IOException {
        Superblock superblock;
        try {
            superblock = Superblock.readSuperblock(channel, offset);
        } catch (RuntimeException e) {
            throw broken(file, offset, "its first block is broken");
        }
        long size = channel.size();
        if (superblock.getBaseAddressByte() != offset) {
            throw broken(file, offset, "its first block names another place as the start of the file");
        }
        if (superblock.getEndOfFileAddress() > size) {
            throw new UnreadableException(
                    file,
                    "byte " + size,
                    "the file is cut off: it declares " + superblock.getEndOfFileAddress() + " bytes",
                    "copy it again");
        }
        return new HdfStorage(file, channel, superblock, size);
    }

    private static UnreadableException broken(Path file, long at, String problem) {
        return new UnreadableException(file, "byte " + at, problem, "copy or export it again");
    }

    /** Lets the library work; whatever it throws becomes one line that names the place read last. */
    <T> T guarded(String what, Supplier<T> work) throws UnreadableException {
        try {
            return work.get();
        } catch (RuntimeException e) {
            throw broken(
                    file, lastAddress, problem.isEmpty() ? "the HDF5 structure of " + what + " is broken" : problem);
        } catch (StackOverflowError e) {
            // the library follows trees by calling itself, and a file can nest them as deep as it likes
            throw broken(file, lastAddress, "the HDF5 structure of " + what + " is nested without end");
        }
    }

    /** Like {@link #guarded}; empty for what the library says it does not support. */
    <T> Optional<T> supported(String what, Supplier<T> work) throws UnreadableException {
        return guarded(what, () -> {
            try {
                return Optional.of(work.get());
            } catch (RuntimeException e) {
                for (Throwable cause = e; cause != null; cause = cause.getCause()) {
                    if (cause instanceof UnsupportedHdfException) {
                        return Optional.empty();
                    }
                }
                throw e;
            }
        });
    }

    @Override
    public ByteBuffer readBufferFromAddress(long address, int length) {
        return mapNoOffset(address + superblock.getBaseAddressByte(), length);
    }

    @Override
    public ByteBuffer map(long address, long length) {
        return mapNoOffset(address + superblock.getBaseAddressByte(), length);
    }

    @Override
    public ByteBuffer mapNoOffset(long address, long length) {
        lastAddress = address;
        if (address < 0 || length < 0 || length > size - address) {
            throw refused("a part of the HDF5 structure lies beyond the end of the file");
        }
        handedOut += length;
        int before = reads.merge(address, 1, Integer::sum);
        if (before > MOST_READS_OF_ONE_PIECE || handedOut > ALWAYS_BYTES + 2 * size) {
            throw refused("the HDF5 structure leads in circles");
        }
        if (length > MOST_PIECE_BYTES || reads.size() > MOST_PIECES) {
            throw refused("the HDF5 structure takes " + length + " bytes in one piece, more than are kept");
        }
        ByteBuffer buffer = ByteBuffer.allocate((int) length).order(ByteOrder.LITTLE_ENDIAN);
        fill(buffer, address);
        checkCounts(buffer);
        return buffer;
    }

    private void fill(ByteBuffer buffer, long address) {
        try {
            while (buffer.hasRemaining()) {
                if (channel.read(buffer, address + buffer.position()) < 0) {
                    throw refused("the file became shorter while it was read");
                }
            }
        } catch (IOException e) {
            throw new HdfException("cannot read", e);
        }
        buffer.flip();
    }

    /** An index states how many entries it has, each of which takes bytes of the file. */
    private void checkCounts(ByteBuffer buffer) {
        if (buffer.limit() < 4) {
            return;
        }
        byte[] start = new byte[4];
        buffer.get(0, start);
        String signature = new String(start, StandardCharsets.ISO_8859_1);
        int at = switch (signature) {
            case "FAHD" -> 8;
            case "EAHD" -> 12 + 4 * getSizeOfLengths();
            case "BTHD" -> 18 + getSizeOfOffsets();
            default -> -1;
        };
        if (at >= 0 && buffer.limit() >= at + Math.min(Integer.BYTES, getSizeOfLengths())) {
            long count = getSizeOfLengths() >= Integer.BYTES ? buffer.getInt(at) : buffer.getShort(at);
            if (count < 0 || count > size / 4) {
                throw refused("an index declares " + count + " entries, more than the file has room for");
            }
        }
    }

    private HdfException refused(String what) {
        problem = what;
        return new HdfException(what);
    }

    Path file() {
        return file;
    }

    /** A place in the file as a byte of it. */
    long byteOf(long address) {
        return address + superblock.getBaseAddressByte();
    }

    @Override
    public long getUserBlockSize() {
        return superblock.getBaseAddressByte();
    }

    @Override
    public Superblock getSuperblock() {
        return superblock;
    }

    @Override
    public FileChannel getFileChannel() {
        return channel;
    }

    @Override
    public int getSizeOfOffsets() {
        return superblock.getSizeOfOffsets();
    }

    @Override
    public int getSizeOfLengths() {
        return superblock.getSizeOfLengths();
    }

    @Override
    public void close() {
        // whoever opened the channel closes it
    }

    @Override
    public long size() {
        return size;
    }

    @Override
    public boolean inMemory() {
        return false;
    }
}
