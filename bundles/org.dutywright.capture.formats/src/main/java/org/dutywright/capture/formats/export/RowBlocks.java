// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.export;

import java.io.IOException;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;

/** All channels of a capture, a block of rows at a time; the fewer rows, the more channels there are. */
final class RowBlocks {
    private static final int MOST_ROWS = 1 << 14;
    private static final int MOST_VALUES = 1 << 20;

    private final Capture capture;
    private final Progress progress;
    private final double[] seconds;
    private final double[][] values;
    private long first;
    private int count;

    private RowBlocks(Capture capture, Progress progress, int rows) {
        this.capture = capture;
        this.progress = progress;
        seconds = new double[rows];
        values = new double[capture.channels().size()][rows];
    }

    /** Begins a task in rows. */
    static RowBlocks of(Capture capture, String task, Progress progress) {
        int channels = Math.max(1, capture.channels().size());
        progress.begin(task, capture.sampleCount());
        return new RowBlocks(capture, progress, Math.clamp(MOST_VALUES / channels, 1, MOST_ROWS));
    }

    /** Goes to the next block and reports the one before as work; false after the last one. */
    boolean next() throws IOException {
        progress.worked(count);
        progress.checkCancelled();
        first += count;
        count = (int) Math.min(seconds.length, capture.sampleCount() - first);
        if (count == 0) {
            return false;
        }
        for (int channel = 0; channel < values.length; channel++) {
            capture.samples().read(channel, first, values[channel], 0, count);
        }
        return true;
    }

    /** Number of rows in the block. */
    int count() {
        return count;
    }

    /** Values of the block by channel and row. */
    double[][] values() {
        return values;
    }

    /** Instants of the block's rows. */
    double[] seconds() throws IOException {
        capture.timeBase().readSeconds(first, seconds, 0, count);
        return seconds;
    }
}
