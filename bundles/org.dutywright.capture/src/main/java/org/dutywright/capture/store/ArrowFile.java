// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.apache.arrow.flatbuf.Footer;
import org.apache.arrow.flatbuf.MetadataVersion;
import org.apache.arrow.flatbuf.Schema;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;

/**
 * An Arrow IPC file that is open, its layout known and checked: every offset, count and length that it states lies
 * within the file before anything is allocated or read by it.
 */
final class ArrowFile implements AutoCloseable {
    private static final int LEAST_BYTES = 2 * ArrowFileWriter.PREFIX_BYTES + Integer.BYTES;
    private static final int END_BYTES = Integer.BYTES + ArrowFileWriter.MAGIC.length;
    private static final int MOST_FOOTER_BYTES = 1 << 25;

    private final Path path;
    private final FileChannel channel;
    private final long size;
    private final List<ArrowColumn> columns;
    private final Map<String, String> metadata;
    private final ArrowBatches batches;

    private ArrowFile(
            Path path,
            FileChannel channel,
            long size,
            List<ArrowColumn> columns,
            Map<String, String> metadata,
            ArrowBatches batches) {
        this.path = path;
        this.channel = channel;
        this.size = size;
        this.columns = columns;
        this.metadata = metadata;
        this.batches = batches;
    }

    /** Opens a file and reads its layout; the file is closed again if that fails. */
    static ArrowFile open(Path path, Progress progress) throws UnreadableException, IOException {
        FileChannel channel = FileChannel.open(path, StandardOpenOption.READ);
        boolean kept = false;
        try {
            ArrowFile file = read(path, channel, progress);
            kept = true;
            return file;
        } finally {
            if (!kept) {
                channel.close();
            }
        }
    }

    private static ArrowFile read(Path path, FileChannel channel, Progress progress)
            throws UnreadableException, IOException {
        long size = channel.size();
        if (size < LEAST_BYTES) {
            throw cutOff(path, size);
        }
        byte[] end = bytes(channel, size - END_BYTES, END_BYTES);
        if (!Arrays.equals(ArrowFileWriter.MAGIC, Arrays.copyOfRange(end, Integer.BYTES, END_BYTES))) {
            throw cutOff(path, size);
        }
        int length = ByteBuffer.wrap(end).order(ByteOrder.LITTLE_ENDIAN).getInt();
        long footerStart = size - END_BYTES - length;
        if (length <= 0 || footerStart < ArrowFileWriter.PREFIX_BYTES) {
            throw damaged(path, size - END_BYTES, "says that its footer has " + length + " bytes");
        }
        if (length > MOST_FOOTER_BYTES) {
            throw new UnreadableException(
                    path,
                    "byte " + footerStart,
                    "has a footer of " + length + " bytes, more than " + MOST_FOOTER_BYTES,
                    "write it in fewer batches");
        }
        ByteBuffer bytes = ByteBuffer.wrap(bytes(channel, footerStart, length));
        return parsed(path, footerStart, () -> Footer.getRootAsFooter(bytes), footer -> {
            if (footer.version() < MetadataVersion.V4) {
                throw new SchemaReader.Refusal("is of an old version of the format", "write it again");
            }
            Schema schema = footer.schema();
            List<ArrowColumn> columns = SchemaReader.columns(schema);
            ArrowBatches batches = new BatchReader(path, channel, columns, footerStart).read(footer, progress);
            return new ArrowFile(path, channel, size, columns, SchemaReader.metadata(schema), batches);
        });
    }

    /** What is done with a message. */
    @FunctionalInterface
    interface Use<M, T> {
        T of(M message) throws UnreadableException, IOException;
    }

    /** Reads something of a message whose bytes may be anything. */
    static <M, T> T parsed(Path path, long position, Supplier<M> message, Use<M, T> use)
            throws UnreadableException, IOException {
        try {
            return use.of(message.get());
        } catch (SchemaReader.Refusal e) {
            throw new UnreadableException(path, "byte " + position, e.getMessage(), e.advice());
        } catch (IndexOutOfBoundsException | NullPointerException | IllegalArgumentException | ArithmeticException e) {
            // the library has no verifier: over damaged bytes it runs into the end of a buffer, or finds nothing
            throw damaged(path, position, "is damaged from there on");
        }
    }

    static UnreadableException damaged(Path path, long position, String how) {
        return new UnreadableException(
                path, "byte " + position, how, "copy or write the file again; it is no sound Arrow file");
    }

    private static UnreadableException cutOff(Path path, long size) {
        return new UnreadableException(
                path,
                "byte " + size,
                "ends without the end of an Arrow file",
                "copy or write it again; it is cut off, or a stream without footer");
    }

    static byte[] bytes(FileChannel channel, long position, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length);
        readFully(channel, position, buffer);
        return buffer.array();
    }

    /** Fills a buffer from its position to its limit. */
    static void readFully(FileChannel channel, long start, ByteBuffer buffer) throws IOException {
        long position = start;
        while (buffer.hasRemaining()) {
            int count = channel.read(buffer, position);
            if (count < 0) {
                throw new EOFException("the file became shorter while it was read");
            }
            position += count;
        }
    }

    Path path() {
        return path;
    }

    FileChannel channel() {
        return channel;
    }

    long size() {
        return size;
    }

    List<ArrowColumn> columns() {
        return columns;
    }

    Map<String, String> metadata() {
        return metadata;
    }

    ArrowBatches batches() {
        return batches;
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
