// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Objects;

/**
 * A growing list of records of doubles that stays on the heap while it is small and goes to a temporary file when it is
 * not. The file has no name any more once it is open, where the system allows that, so nothing is left behind whatever
 * happens. One thread writes; after that, any number of threads read, each through its own {@link Cursor}.
 */
public final class RecordSpill implements AutoCloseable {
    /** Doubles a page: 64 KiB. */
    private static final int PAGE_DOUBLES = 1 << 13;

    /** Pages kept on the heap before a file is made: 2 MiB. */
    private static final int HEAP_PAGES = 32;

    private final int width;
    private final int pageRecords;
    private double[][] heap = new double[0][];
    private FileChannel file;
    private double[] page;
    private int inPage;
    private long size;
    private final ByteBuffer buffer =
            ByteBuffer.allocateDirect(PAGE_DOUBLES * Double.BYTES).order(ByteOrder.nativeOrder());

    /** A list of records of so many doubles. */
    public RecordSpill(int width) {
        this.width = width;
        pageRecords = PAGE_DOUBLES / width;
        page = new double[pageRecords * width];
    }

    /** Number of records. */
    public long size() {
        return size;
    }

    /** Adds a record. */
    public void add(double... record) throws IOException {
        System.arraycopy(record, 0, page, inPage * width, width);
        inPage++;
        size++;
        if (inPage == pageRecords) {
            store();
        }
    }

    private void store() throws IOException {
        if (file == null && heap.length < HEAP_PAGES) {
            heap = Arrays.copyOf(heap, heap.length + 1);
            heap[heap.length - 1] = page;
            page = new double[pageRecords * width];
        } else {
            if (file == null) {
                file = open();
                for (int i = 0; i < heap.length; i++) {
                    write(heap[i], i);
                }
                heap = new double[0][];
            }
            write(page, size / pageRecords - 1);
        }
        inPage = 0;
    }

    private static FileChannel open() throws IOException {
        Path path = Files.createTempFile("dutywright-", ".pulses");
        return FileChannel.open(
                path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
    }

    private void write(double[] full, long pageIndex) throws IOException {
        buffer.clear();
        buffer.asDoubleBuffer().put(full);
        buffer.limit(full.length * Double.BYTES);
        long position = pageIndex * pageRecords * width * Double.BYTES;
        while (buffer.hasRemaining()) {
            position += file.write(buffer, position);
        }
    }

    /** Reads records from here on, in any order; best in rising order. For one thread. */
    public Cursor cursor() {
        return new Cursor();
    }

    /** Frees the file. */
    @Override
    public void close() throws IOException {
        heap = new double[0][];
        if (file != null) {
            file.close();
        }
    }

    /** Reads the records. */
    public final class Cursor {
        private final double[] loaded = new double[0];
        private double[] current = loaded;
        private double[] own = loaded;
        private ByteBuffer bytes;
        private long currentPage = -1;

        private Cursor() {}

        /**
         * Reads one record.
         *
         * @param index of the record
         * @param target receives it
         */
        public void read(long index, double[] target) throws IOException {
            Objects.checkIndex(index, size);
            long wanted = index / pageRecords;
            if (wanted != currentPage) {
                load(wanted);
            }
            System.arraycopy(current, (int) (index - wanted * pageRecords) * width, target, 0, width);
        }

        private void load(long wanted) throws IOException {
            if (wanted == size / pageRecords) {
                current = page;
            } else if (file == null) {
                current = heap[(int) wanted];
            } else {
                readPage(wanted);
                current = own;
            }
            currentPage = wanted;
        }

        private void readPage(long wanted) throws IOException {
            if (bytes == null) {
                own = new double[pageRecords * width];
                bytes = ByteBuffer.allocateDirect(own.length * Double.BYTES).order(ByteOrder.nativeOrder());
            }
            bytes.clear();
            long position = wanted * own.length * Double.BYTES;
            while (bytes.hasRemaining()) {
                int read = file.read(bytes, position + bytes.position());
                if (read < 0) {
                    throw new IOException("temporary file of measured pulses ends too early");
                }
            }
            bytes.flip();
            bytes.asDoubleBuffer().get(own);
        }
    }
}
