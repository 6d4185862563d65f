// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Smallest and largest values of one channel for drawing: what a column of pixels covers, whatever the length of the
 * capture. No sample is ever lost: a glitch of one sample shows at every zoom.
 *
 * <p>The samples are summed up in blocks, the blocks in coarser ones. Memory stays below {@value #MAX_MEBIBYTES} MiB a
 * channel: longer captures get larger blocks. Building reads every sample once, where the blocks were not summed up while
 * the capture was read. Safe for several threads.
 */
public final class Overview {
    static final int MAX_MEBIBYTES = 20;

    private static final int SMALLEST_BLOCK = BlockExtremes.SMALLEST_BLOCK;
    private static final int MAX_BLOCKS = BlockExtremes.MOST_BLOCKS;
    private static final int FACTOR = 8;
    private static final int SMALLEST_LEVEL = 4096;
    private static final int READ_SAMPLES = 1 << 16;
    // a column of this many blocks may start at the nearest block: that moves it by less than a tenth of a pixel
    private static final int EXACT_BELOW_BLOCKS = 16;

    private final Samples samples;
    private final int channel;
    private final List<Level> levels;

    /** Extremes of neighbouring stretches of a channel, in the channel's unit. */
    public static final class Columns {
        private final double[] min;
        private final double[] max;

        private Columns(int count) {
            min = new double[count];
            max = new double[count];
            Arrays.fill(min, Double.POSITIVE_INFINITY);
            Arrays.fill(max, Double.NEGATIVE_INFINITY);
        }

        /** Number of stretches. */
        public int count() {
            return min.length;
        }

        /** Smallest value of one stretch. */
        public double min(int index) {
            return min[index];
        }

        /** Largest value of one stretch. */
        public double max(int index) {
            return max[index];
        }

        private void include(int index, double low, double high) {
            min[index] = Math.min(min[index], low);
            max[index] = Math.max(max[index], high);
        }
    }

    private record Level(long samplesPerBlock, Columns blocks) {}

    private Overview(Samples samples, int channel, List<Level> levels) {
        this.samples = samples;
        this.channel = channel;
        this.levels = List.copyOf(levels);
    }

    /**
     * Builds the overview of one channel.
     *
     * @param progress gets one task in samples, which is over at once where they were summed up before
     * @throws CancelledException if the user asked to stop
     */
    public static Overview of(Capture capture, int channel, Progress progress) throws IOException {
        Objects.checkIndex(channel, capture.channels().size());
        long count = capture.sampleCount();
        progress.begin("Overview of " + capture.channels().get(channel).name(), count);
        Optional<BlockExtremes> gathered = capture.samples().extremes(channel);
        Level level = gathered.isPresent()
                ? base(gathered.get())
                : readBase(capture.samples(), channel, samplesPerBlock(count), progress);
        List<Level> levels = new ArrayList<>();
        levels.add(level);
        while (level.blocks().count() > SMALLEST_LEVEL) {
            level = coarser(level);
            levels.add(level);
        }
        return new Overview(capture.samples(), channel, levels);
    }

    private static long samplesPerBlock(long count) {
        long perBlock = SMALLEST_BLOCK;
        while ((count + perBlock - 1) / perBlock > MAX_BLOCKS) {
            perBlock *= 2;
        }
        return perBlock;
    }

    private static Level base(BlockExtremes gathered) {
        Level level = new Level(gathered.samplesPerBlock(), new Columns(gathered.count()));
        for (int i = 0; i < gathered.count(); i++) {
            level.blocks().include(i, gathered.min(i), gathered.max(i));
        }
        return level;
    }

    private static Level readBase(Samples samples, int channel, long perBlock, Progress progress) throws IOException {
        long count = samples.sampleCount();
        int blocks = Math.toIntExact((count + perBlock - 1) / perBlock);
        Level level = new Level(perBlock, new Columns(blocks));
        double[] buffer = new double[(int) Math.min(READ_SAMPLES, count)];
        for (long first = 0; first < count; first += buffer.length) {
            progress.checkCancelled();
            int length = (int) Math.min(buffer.length, count - first);
            samples.read(channel, first, buffer, 0, length);
            // READ_SAMPLES is a multiple of every block up to its own size, larger blocks are joined by include
            for (int from = 0; from < length; ) {
                int block = (int) ((first + from) / perBlock);
                int to = (int) Math.min(length, (block + 1) * perBlock - first);
                include(level, block, buffer, from, to);
                from = to;
            }
            progress.worked(length);
        }
        return level;
    }

    private static void include(Level level, int block, double[] values, int from, int to) {
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            min = Math.min(min, values[i]);
            max = Math.max(max, values[i]);
        }
        level.blocks().include(block, min, max);
    }

    private static Level coarser(Level fine) {
        Columns blocks = fine.blocks();
        Level level = new Level(fine.samplesPerBlock() * FACTOR, new Columns((blocks.count() + FACTOR - 1) / FACTOR));
        for (int i = 0; i < blocks.count(); i++) {
            level.blocks().include(i / FACTOR, blocks.min(i), blocks.max(i));
        }
        return level;
    }

    /** Number of samples of the channel. */
    public long sampleCount() {
        return samples.sampleCount();
    }

    /**
     * Extremes of a window, cut into columns of equal width. Each sample of the window is in exactly one column. In a
     * wide window a column may begin up to a tenth of its width early or late.
     *
     * @param firstSample first sample of the window
     * @param endSample sample after its last one
     * @param columnCount number of columns, not above the number of samples in the window
     */
    public Columns columns(long firstSample, long endSample, int columnCount) throws IOException {
        Objects.checkFromToIndex(firstSample, endSample, sampleCount());
        if (columnCount < 1 || columnCount > endSample - firstSample) {
            throw new IllegalArgumentException(columnCount + " columns for " + (endSample - firstSample) + " samples");
        }
        Columns columns = new Columns(columnCount);
        long from = firstSample;
        for (int i = 0; i < columnCount; i++) {
            long to = i + 1 == columnCount ? endSample : border(firstSample, endSample, columnCount, i + 1);
            gather(columns, i, from, to, levels.size() - 1);
            from = to;
        }
        return columns;
    }

    private long border(long first, long end, int columnCount, int index) {
        double width = (double) (end - first) / columnCount;
        long border = first + Math.round(width * index);
        long block = levels.getFirst().samplesPerBlock();
        return width < EXACT_BELOW_BLOCKS * (double) block ? border : (border + block / 2) / block * block;
    }

    // whole blocks of the coarsest level that has some, what is left at both ends from the next finer one
    private void gather(Columns columns, int column, long from, long to, int levelIndex) throws IOException {
        if (from >= to) {
            return;
        }
        if (levelIndex < 0) {
            gatherSamples(columns, column, from, to);
            return;
        }
        Level level = levels.get(levelIndex);
        long size = level.samplesPerBlock();
        long firstBlock = (from + size - 1) / size;
        long endBlock = to == sampleCount() ? level.blocks().count() : to / size;
        if (firstBlock >= endBlock) {
            gather(columns, column, from, to, levelIndex - 1);
            return;
        }
        gather(columns, column, from, firstBlock * size, levelIndex - 1);
        for (int block = (int) firstBlock; block < endBlock; block++) {
            columns.include(column, level.blocks().min(block), level.blocks().max(block));
        }
        gather(columns, column, endBlock * size, to, levelIndex - 1);
    }

    private void gatherSamples(Columns columns, int column, long from, long to) throws IOException {
        double[] buffer = new double[(int) Math.min(READ_SAMPLES, to - from)];
        for (long first = from; first < to; first += buffer.length) {
            int length = (int) Math.min(buffer.length, to - first);
            samples.read(channel, first, buffer, 0, length);
            for (int i = 0; i < length; i++) {
                columns.include(column, buffer[i], buffer[i]);
            }
        }
    }
}
