// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A recording: channels that share one time base. Values are read through {@link #samples()} a window at a time.
 *
 * @param sources the files it came from, in the order given
 * @param channels in the order of the columns
 * @param timeBase when the samples were taken
 * @param samples the values
 * @param guessed what the reader decided by looking at the file, by name of the decision, in the order made
 * @param statedRates sample rates that were stated beside what the time base rests on
 * @param asRead settings that make the same capture of the same file, with all that was guessed; nothing said if it
 *     came from no file
 */
public record Capture(
        List<Source> sources,
        List<Channel> channels,
        TimeBase timeBase,
        Samples samples,
        Map<String, String> guessed,
        List<StatedRate> statedRates,
        ReadSettings asRead)
        implements AutoCloseable {

    /** Copies its lists and its map, keeping the order. */
    public Capture {
        sources = List.copyOf(sources);
        channels = List.copyOf(channels);
        guessed = Collections.unmodifiableMap(new LinkedHashMap<>(guessed));
        statedRates = List.copyOf(statedRates);
    }

    /** A recording that came from no file. */
    public Capture(
            List<Source> sources,
            List<Channel> channels,
            TimeBase timeBase,
            Samples samples,
            Map<String, String> guessed,
            List<StatedRate> statedRates) {
        this(sources, channels, timeBase, samples, guessed, statedRates, ReadSettings.none());
    }

    /** A recording without a stated rate that came from no file. */
    public Capture(
            List<Source> sources,
            List<Channel> channels,
            TimeBase timeBase,
            Samples samples,
            Map<String, String> guessed) {
        this(sources, channels, timeBase, samples, guessed, List.of());
    }

    /** The same with other settings that would make it. */
    Capture withAsRead(ReadSettings settings) {
        return new Capture(sources, channels, timeBase, samples, guessed, statedRates, settings);
    }

    /** Number of samples of each channel. */
    public long sampleCount() {
        return samples.sampleCount();
    }

    /** Frees what holds the values. */
    @Override
    public void close() throws IOException {
        samples.close();
    }
}
