// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.List;

/** Values together with other things that must be freed with them. */
final class OwningSamples implements Samples {
    private final Samples values;
    private final List<? extends Samples> others;

    OwningSamples(Samples values, List<? extends Samples> others) {
        this.values = values;
        this.others = List.copyOf(others);
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
    public void close() throws IOException {
        Closing.all(values, others);
    }
}
