// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.util.Arrays;

/**
 * Smallest and largest value of each block of samples of one channel, gathered while the samples pass by. How many there
 * will be need not be known: where there are too many blocks, neighbours become one. For one thread until it is complete.
 */
public final class BlockExtremes {
    /** Samples in a block, as long as there are not too many blocks. */
    static final int SMALLEST_BLOCK = 256;

    static final int MOST_BLOCKS = 1 << 20;
    private static final int MOST_BLOCKS_OF_ALL_CHANNELS = 1 << 22;
    private static final int FEWEST_BLOCKS = 1 << 10;

    private final int mostBlocks;
    private double[] min = new double[FEWEST_BLOCKS];
    private double[] max = new double[FEWEST_BLOCKS];
    private long samplesPerBlock = SMALLEST_BLOCK;
    private int blocks;
    private long inLastBlock = SMALLEST_BLOCK;

    BlockExtremes(int mostBlocks) {
        this.mostBlocks = mostBlocks;
    }

    /** For one of several channels of a capture, all of which together shall not take too much memory. */
    public static BlockExtremes ofOneOf(int channels) {
        int share = Integer.highestOneBit(MOST_BLOCKS_OF_ALL_CHANNELS / channels);
        return new BlockExtremes(Math.clamp(share, FEWEST_BLOCKS, MOST_BLOCKS));
    }

    /** Adds the next samples, the first {@code count} of an array. */
    public void add(double[] values, int count) {
        for (int from = 0; from < count; ) {
            if (inLastBlock == samplesPerBlock) {
                beginBlock();
            }
            int to = (int) Math.min(count, from + samplesPerBlock - inLastBlock);
            double low = min[blocks - 1];
            double high = max[blocks - 1];
            for (int i = from; i < to; i++) {
                low = values[i] < low ? values[i] : low;
                high = values[i] > high ? values[i] : high;
            }
            min[blocks - 1] = low;
            max[blocks - 1] = high;
            inLastBlock += to - from;
            from = to;
        }
    }

    /** Adds the next sample. */
    void add(double value) {
        if (inLastBlock == samplesPerBlock) {
            beginBlock();
        }
        int block = blocks - 1;
        min[block] = value < min[block] ? value : min[block];
        max[block] = value > max[block] ? value : max[block];
        inLastBlock++;
    }

    private void beginBlock() {
        if (blocks == mostBlocks) {
            for (int i = 0; i < blocks / 2; i++) {
                min[i] = Math.min(min[2 * i], min[2 * i + 1]);
                max[i] = Math.max(max[2 * i], max[2 * i + 1]);
            }
            blocks /= 2;
            samplesPerBlock *= 2;
        }
        if (blocks == min.length) {
            min = Arrays.copyOf(min, 2 * blocks);
            max = Arrays.copyOf(max, 2 * blocks);
        }
        min[blocks] = Double.POSITIVE_INFINITY;
        max[blocks++] = Double.NEGATIVE_INFINITY;
        inLastBlock = 0;
    }

    /** Number of samples in each block but the last, which may be shorter. */
    public long samplesPerBlock() {
        return samplesPerBlock;
    }

    /** Number of blocks. */
    public int count() {
        return blocks;
    }

    /** Smallest value of a block. */
    public double min(int block) {
        return min[block];
    }

    /** Largest value of a block. */
    public double max(int block) {
        return max[block];
    }
}
