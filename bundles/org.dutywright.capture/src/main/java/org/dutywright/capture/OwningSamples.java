// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Values together with other things that must be freed with them, and with what is known of their counts. */
final class OwningSamples implements Samples {
    private final Samples values;
    private final List<? extends Samples> others;
    private final Map<Integer, CountScale> counts;
    private final List<BlockExtremes> extremes;

    OwningSamples(
            Samples values,
            List<? extends Samples> others,
            Map<Integer, CountScale> counts,
            List<BlockExtremes> extremes) {
        this.extremes = List.copyOf(extremes);
        this.values = values;
        this.others = List.copyOf(others);
        this.counts = Map.copyOf(counts);
    }

    @Override
    public int channelCount() {
        return values.channelCount();
    }

    @Override
    public long sampleCount() {
        return values.sampleCount();
    }

    @Override
    public void read(int channel, long firstSample, double[] target, int offset, int count) throws IOException {
        values.read(channel, firstSample, target, offset, count);
    }

    @Override
    public Optional<CountScale> counts(int channel) {
        return Optional.ofNullable(counts.get(channel));
    }

    @Override
    public Optional<BlockExtremes> extremes(int channel) {
        return Optional.of(extremes.get(channel));
    }

    @Override
    public void close() throws IOException {
        Closing.all(values, others);
    }
}
