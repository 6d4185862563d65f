// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;

/** Rows of placed samples, a block at a time, in the order of the file. */
final class PlacedRows {
    private static final int BLOCK_VALUES = 1 << 16;

    private final Samples samples;
    private final double[][] block;
    private long next;

    PlacedRows(Samples samples) {
        this.samples = samples;
        int rows = Math.max(1, BLOCK_VALUES / samples.channelCount());
        block = new double[samples.channelCount()][rows];
    }

    Samples samples() {
        return samples;
    }

    /** Reads the next rows, at most so many, and says how many it read. */
    int read(long most) throws IOException {
        int count = (int) Math.min(block[0].length, most);
        for (int channel = 0; channel < block.length; channel++) {
            samples.read(channel, next, block[channel], 0, count);
        }
        next += count;
        return count;
    }

    /** The values of the rows read last, channel by channel. */
    double[][] block() {
        return block;
    }

    /** Whether all of the first rows of the block hold numbers. */
    boolean areNumbers(int count) {
        boolean finite = true;
        for (double[] values : block) {
            for (int i = 0; i < count; i++) {
                finite &= Math.abs(values[i]) <= Double.MAX_VALUE;
            }
        }
        return finite;
    }

    /** Copies one row of the block. */
    boolean row(int index, double[] row) {
        boolean complete = true;
        for (int channel = 0; channel < row.length; channel++) {
            row[channel] = block[channel][index];
            complete &= Double.isFinite(row[channel]);
        }
        return complete;
    }
}
