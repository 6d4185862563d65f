// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;

/** Copies the rows of a table, block after block. */
final class TableRows {
    private static final int MOST_BLOCK_ROWS = 1 << 13;
    private static final int BLOCK_VALUES = 1 << 20;

    private final ArrowFile file;
    private final Optional<Stamps> stamps;
    private final List<Integer> indices;
    private final List<ColumnChoice.Chosen> chosen;
    private final ByteBuffer numbers;
    private final double[][] block;
    private final double[] instants;
    private long base;
    private boolean baseKnown;
    private double largestStamp;
    private double lastSeconds = Double.NEGATIVE_INFINITY;

    /**
     * The column of time.
     *
     * @param index of the column
     * @param type of its numbers
     * @param factor by which they become seconds
     * @param absolute whether they count from the first row on
     */
    record Stamps(int index, NumberType type, double factor, boolean absolute) {}

    /**
     * Prepares.
     *
     * @param indices columns that values may come from
     * @param chosen of these
     */
    TableRows(ArrowFile file, Optional<Stamps> stamps, List<Integer> indices, List<ColumnChoice.Chosen> chosen) {
        this.file = file;
        this.stamps = stamps;
        this.indices = indices;
        this.chosen = chosen;
        int rows = Math.clamp(BLOCK_VALUES / chosen.size(), Byte.SIZE, MOST_BLOCK_ROWS) / Byte.SIZE * Byte.SIZE;
        numbers = ByteBuffer.allocate(rows * Long.BYTES).order(ByteOrder.LITTLE_ENDIAN);
        block = new double[chosen.size()][rows];
        instants = new double[rows];
    }

    /** Copies all rows; those in which a number is missing are left out. */
    void copy(CaptureBuilder builder, Progress progress) throws UnreadableException, IOException {
        ArrowBatches batches = file.batches();
        for (int batch = 0; batch < batches.count(); batch++) {
            long rows = batches.endRow(batch) - batches.firstRow(batch);
            for (long first = 0; first < rows; first += instants.length) {
                progress.checkCancelled();
                int count = (int) Math.min(instants.length, rows - first);
                if (stamps.isPresent()) {
                    readStamps(stamps.get(), batch, first, count);
                }
                for (int i = 0; i < block.length; i++) {
                    readValues(i, batch, first, count);
                }
                append(builder, batches.firstRow(batch) + first, count);
            }
        }
        builder.stampResolution(resolution());
    }

    private double resolution() {
        if (stamps.isEmpty() || stamps.get().type() == NumberType.FLOAT64) {
            return 0;
        }
        double factor = stamps.get().factor();
        return switch (stamps.get().type()) {
            case FLOAT32 -> Math.ulp((float) (largestStamp / factor)) * factor;
            // 10 bits of fraction
            case FLOAT16 -> largestStamp / (1 << 10);
            default -> factor;
        };
    }

    private void append(CaptureBuilder builder, long firstRow, int count) throws UnreadableException, IOException {
        double[] row = new double[block.length];
        for (int i = 0; i < count; i++) {
            boolean complete = stamps.isEmpty() || Double.isFinite(instants[i]);
            for (int channel = 0; channel < row.length; channel++) {
                row[channel] = block[channel][i];
                complete &= Double.isFinite(row[channel]);
            }
            if (!complete) {
                builder.leaveOut();
            } else if (stamps.isEmpty()) {
                builder.append(row);
            } else {
                checkForward(instants[i], firstRow + i);
                builder.append(instants[i], row);
            }
        }
    }

    private void checkForward(double seconds, long row) throws UnreadableException {
        if (seconds < lastSeconds) {
            throw new UnreadableException(
                    file.path(),
                    "row " + (row + 1),
                    "time goes back from " + lastSeconds + " s to " + seconds + " s",
                    "split the recording where its time starts anew");
        }
        lastSeconds = seconds;
        largestStamp = Math.max(largestStamp, Math.abs(seconds));
    }

    private void readStamps(Stamps time, int batch, long first, int count) throws IOException {
        load(time.index(), batch, first, count);
        if (!time.absolute()) {
            time.type().read(numbers, instants, 0, count);
            for (int i = 0; i < count; i++) {
                instants[i] *= time.factor();
            }
        } else {
            if (!baseKnown) {
                base = numbers.getLong(0);
                baseKnown = true;
            }
            for (int i = 0; i < count; i++) {
                // whole numbers are subtracted: as doubles, points in time since 1970 would lose their last digits
                instants[i] = (numbers.getLong(i * Long.BYTES) - base) * time.factor();
            }
        }
        markMissing(time.index(), batch, first, instants, count);
    }

    private void readValues(int channel, int batch, long first, int count) throws IOException {
        ColumnChoice.Chosen column = chosen.get(channel);
        int index = indices.get(column.column());
        load(index, batch, first, count);
        double[] target = block[channel];
        file.columns().get(index).number().orElseThrow().read(numbers, target, 0, count);
        for (int i = 0; i < count; i++) {
            target[i] *= column.factor();
        }
        markMissing(index, batch, first, target, count);
    }

    private void load(int index, int batch, long first, int count) throws IOException {
        int bytes = file.columns().get(index).number().orElseThrow().bytes();
        numbers.clear().limit(count * bytes);
        ArrowFile.readFully(file.channel(), file.batches().values(index, batch) + first * bytes, numbers);
        numbers.flip();
    }

    private void markMissing(int index, int batch, long first, double[] target, int count) throws IOException {
        long bits = file.batches().validity(index, batch);
        if (bits == ArrowBatches.NONE) {
            return;
        }
        // blocks begin at whole bytes of the bits
        byte[] there = ArrowFile.bytes(file.channel(), bits + first / Byte.SIZE, Math.ceilDiv(count, Byte.SIZE));
        for (int i = 0; i < count; i++) {
            if ((there[i / Byte.SIZE] >> (i % Byte.SIZE) & 1) == 0) {
                target[i] = Double.NaN;
            }
        }
    }
}
