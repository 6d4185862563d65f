// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.numpy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.Optional;
import org.dutywright.capture.PlacedSamples;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ElementType;

/**
 * An array in a file, read a block of rows at a time. Nothing is allocated by what it declares but for its columns, which
 * are limited.
 */
final class ArrayData {
    /** Most columns of one array. */
    static final int MOST_COLUMNS = 1000;

    private static final int BLOCK_BYTES = 1 << 16;

    private final FileChannel channel;
    private final long start;
    private final ArrayHeader header;
    private final long rows;
    private final int blockRows;
    private final ByteBuffer buffer;

    private ArrayData(FileChannel channel, long start, ArrayHeader header, long rows) {
        this.channel = channel;
        this.start = start;
        this.header = header;
        this.rows = rows;
        int rowBytes = rowBytes();
        blockRows = Math.max(1, Math.min(1 << 14, BLOCK_BYTES / rowBytes));
        buffer = ByteBuffer.allocate(blockRows * rowBytes).order(header.type().order());
    }

    /**
     * Opens.
     *
     * @param file for messages
     * @param name of the array in an archive, empty for a file of its own
     * @param from first byte of the array in the channel
     * @param bytes most bytes that it may have
     */
    static ArrayData open(Path file, String name, FileChannel channel, long from, long bytes)
            throws UnreadableException, IOException {
        String at = "byte " + from + (name.isEmpty() ? "" : " of what array '" + name + "' unpacks to");
        byte[] prefix = read(channel, from, ArrayHeader.PREFIX_BYTES, bytes);
        if (prefix.length < ArrayHeader.PREFIX_BYTES || !ArrayHeader.isArray(prefix)) {
            throw new UnreadableException(file, at, "there is no NumPy array", "save it again with numpy.save");
        }
        long text = ArrayHeader.textBytes(prefix);
        int before = ArrayHeader.prefixBytes(prefix);
        if (text > ArrayHeader.MOST_BYTES || before + text > bytes) {
            throw new UnreadableException(
                    file, at, "the header of the array declares " + text + " bytes", "save it again with numpy.save");
        }
        ArrayHeader header = ArrayHeader.parse(prefix, read(channel, from + before, (int) text, bytes - before))
                .orElseThrow(() -> new UnreadableException(
                        file, at, "the array holds no plain numbers", "save an array of floats or whole numbers"));
        return sized(file, at, channel, from + before + text, header, bytes - before - text);
    }

    private static ArrayData sized(
            Path file, String at, FileChannel channel, long start, ArrayHeader header, long bytes)
            throws UnreadableException {
        if (header.shape().size() > 2) {
            throw new UnreadableException(
                    file, at, "the array has " + header.shape().size() + " dimensions", "save one or two of them");
        }
        if (header.columns() < 1 || header.columns() > MOST_COLUMNS) {
            throw new UnreadableException(
                    file,
                    at,
                    "the array has " + header.columns() + " columns, not 1 to " + MOST_COLUMNS,
                    "save fewer channels");
        }
        long held = bytes / header.rowBytes() / (header.fields().isEmpty() ? header.columns() : 1);
        if (header.fields().isEmpty() && header.rows() > held && !header.rowsTogether() && header.columns() > 1) {
            // the columns lie one after the other: what is missing is in the last ones
            throw new UnreadableException(
                    file, at, "the array is cut off: it declares " + header.rows() + " rows", "copy it again");
        }
        return new ArrayData(channel, start, header, Math.min(header.rows(), held));
    }

    private static byte[] read(FileChannel channel, long from, int wanted, long most) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate((int) Math.min(wanted, Math.max(0, most)));
        int count = 0;
        while (bytes.hasRemaining() && count >= 0) {
            count = channel.read(bytes, from + bytes.position());
        }
        byte[] read = new byte[bytes.position()];
        bytes.flip().get(read);
        return read;
    }

    ArrayHeader header() {
        return header;
    }

    /** Number of rows that are there. */
    long rows() {
        return rows;
    }

    int columns() {
        return (int) header.columns();
    }

    /** Bytes from one row to the next. */
    int rowBytes() {
        return header.rowBytes() * (header.fields().isEmpty() && header.rowsTogether() ? columns() : 1);
    }

    private long offset(int column) {
        return (header.rowsTogether() ? column : column * header.rows())
                * header.type().bytes();
    }

    /** Where a column lies in the file, each of its elements multiplied by a factor. */
    PlacedSamples.Column place(int column, double factor) {
        ElementType type = header.typeOf(column);
        long first = start
                + (header.fields().isEmpty()
                        ? offset(column)
                        : header.fields().get(column).offset());
        return new PlacedSamples.Column(first, rowBytes(), type.bytes(), type.order(), type.decoder(factor));
    }

    /** Number of rows that one call of {@link #read} takes at most. */
    int blockRows() {
        return blockRows;
    }

    /** What is said if the array declares more rows than it has. */
    Optional<String> cutOff() {
        return header.rows() > rows
                ? Optional.of("declared as " + header.rows() + " rows, cut off after " + rows)
                : Optional.empty();
    }

    /**
     * Reads rows.
     *
     * @param target one array for each column, from index 0 on
     */
    void read(long firstRow, int count, double[][] target) throws IOException {
        if (!header.fields().isEmpty()) {
            readFields(firstRow, count, target);
            return;
        }
        int size = header.type().bytes();
        if (header.rowsTogether()) {
            fill(start + firstRow * size * columns(), count * size * columns());
            for (int row = 0, at = 0; row < count; row++) {
                for (int column = 0; column < columns(); column++, at += size) {
                    target[column][row] = header.type().value(buffer, at);
                }
            }
            return;
        }
        for (int column = 0; column < columns(); column++) {
            fill(start + (column * header.rows() + firstRow) * size, count * size);
            for (int row = 0; row < count; row++) {
                target[column][row] = header.type().value(buffer, row * size);
            }
        }
    }

    private void readFields(long firstRow, int count, double[][] target) throws IOException {
        int size = header.rowBytes();
        fill(start + firstRow * size, count * size);
        for (int column = 0; column < columns(); column++) {
            FieldList.Field field = header.fields().get(column);
            buffer.order(field.type().order());
            for (int row = 0, at = field.offset(); row < count; row++, at += size) {
                target[column][row] = field.type().value(buffer, at);
            }
        }
    }

    private void fill(long from, int count) throws IOException {
        buffer.clear().limit(count);
        while (buffer.hasRemaining()) {
            if (channel.read(buffer, from + buffer.position()) < 0) {
                throw new IOException("the file became shorter while it was read");
            }
        }
    }
}
