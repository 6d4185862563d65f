// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.Optional;

/**
 * Windowed access to the values of a capture: any stretch of any channel, without holding the whole. Safe for
 * use by several threads. Values are in the channel's unit and always finite: rows with missing values were left
 * out by the reader and appear as gaps.
 */
public interface Samples extends AutoCloseable {
    /** Number of channels. */
    int channelCount();

    /** Number of samples of each channel. */
    long sampleCount();

    /**
     * Reads a stretch of one channel.
     *
     * @param channel index of the channel
     * @param firstSample index of the first sample
     * @param target receives {@code count} values from {@code offset} on
     * @throws IndexOutOfBoundsException if the stretch is not inside the capture
     */
    void read(int channel, long firstSample, double[] target, int offset, int count) throws IOException;

    /**
     * How the values of a channel stand for counts of 16 bits with a sign, where the source holds such counts; else
     * empty.
     *
     * @param channel index of the channel
     */
    default Optional<CountScale> counts(int channel) {
        return Optional.empty();
    }

    /**
     * Smallest and largest values of the blocks of a channel, where they were gathered when the samples passed by.
     *
     * @param channel index of the channel
     */
    default Optional<BlockExtremes> extremes(int channel) {
        return Optional.empty();
    }

    /** Frees what holds the values, temporary files included. */
    @Override
    void close() throws IOException;
}
