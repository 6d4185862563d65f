// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.dutywright.capture.Samples;

/**
 * Columns of doubles that grow row by row: on the heap while they are few, else in a temporary file. Values lie in
 * pages of some thousand rows; in a page, the values of one column lie together, so that a stretch of one column is
 * read in few pieces although the number of rows is not known when the first is written.
 *
 * <p>Appending is for one thread; after {@link #finish} several may read.
 */
public final class ColumnStore implements Samples {
    private static final int MAX_PAGE_ROWS = 1 << 14;
    private static final int MAX_PAGE_VALUES = 1 << 20;

    private final int columns;
    private final int pageRows;
    private final long heapValues;
    private final List<double[]> pages = new ArrayList<>();
    private double[] page;
    private int pageFill;
    private long pageNumber;
    private Optional<SpillFile> spill = Optional.empty();
    private volatile boolean closed;

    /**
     * Makes an empty store.
     *
     * @param columns number of columns
     * @param heapValues number of values beyond which they go to a file
     */
    public ColumnStore(int columns, long heapValues) {
        this.columns = columns;
        this.heapValues = heapValues;
        int rows = MAX_PAGE_ROWS;
        while (rows > 64 && (long) rows * columns > MAX_PAGE_VALUES) {
            rows >>= 1;
        }
        pageRows = rows;
        page = new double[columns * pageRows];
    }

    /** Appends one row: one value for each column. */
    public void append(double[] row) throws IOException {
        int at = pageFill;
        for (int column = 0; column < columns; column++, at += pageRows) {
            page[at] = row[column];
        }
        rowDone();
    }

    /**
     * Appends rows that lie column by column.
     *
     * @param values an array for each column
     * @param count number of rows: the first values of each array
     */
    public void append(double[][] values, int count) throws IOException {
        for (int done = 0; done < count; ) {
            int part = Math.min(count - done, pageRows - pageFill);
            for (int column = 0; column < columns; column++) {
                System.arraycopy(values[column], done, page, column * pageRows + pageFill, part);
            }
            done += part;
            pageFill += part;
            if (pageFill == pageRows) {
                pageDone();
            }
        }
    }

    /** Appends a row of a store of one column. */
    public void append(double value) throws IOException {
        page[pageFill] = value;
        rowDone();
    }

    private void rowDone() throws IOException {
        if (++pageFill == pageRows) {
            pageDone();
        }
    }

    private void pageDone() throws IOException {
        if (spill.isEmpty() && (pageNumber + 1) * page.length > heapValues) {
            spillPages();
        }
        if (spill.isPresent()) {
            spill.get().write(pageNumber * page.length, page, page.length);
        } else {
            pages.add(page);
            page = new double[columns * pageRows];
        }
        pageNumber++;
        pageFill = 0;
    }

    private void spillPages() throws IOException {
        SpillFile file = SpillFile.create();
        spill = Optional.of(file);
        for (int i = 0; i < pages.size(); i++) {
            file.write((long) i * page.length, pages.get(i), page.length);
        }
        pages.clear();
    }

    /** Ends appending. */
    public void finish() throws IOException {
        if (pageFill > 0) {
            int rows = pageFill;
            pageDone();
            pageNumber--;
            pageFill = rows;
        }
        page = new double[0];
    }

    @Override
    public int channelCount() {
        return columns;
    }

    @Override
    public long sampleCount() {
        return pageNumber * pageRows + pageFill;
    }

    @Override
    public void read(int channel, long firstSample, double[] target, int offset, int count) throws IOException {
        Objects.checkIndex(channel, columns);
        Objects.checkFromIndexSize(firstSample, count, sampleCount());
        if (closed) {
            throw new IOException("the capture is closed");
        }
        for (int done = 0; done < count; ) {
            long number = (firstSample + done) / pageRows;
            int row = (int) ((firstSample + done) % pageRows);
            int part = Math.min(count - done, pageRows - row);
            readPart(number, channel * pageRows + row, target, offset + done, part);
            done += part;
        }
    }

    private void readPart(long number, int inPage, double[] target, int offset, int count) throws IOException {
        if (spill.isPresent()) {
            spill.get().read(number * columns * pageRows + inPage, target, offset, count);
        } else {
            System.arraycopy(pages.get((int) number), inPage, target, offset, count);
        }
    }

    @Override
    public void close() throws IOException {
        closed = true;
        if (spill.isPresent()) {
            spill.get().close();
        }
    }
}
