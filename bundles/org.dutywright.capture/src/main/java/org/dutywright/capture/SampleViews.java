// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** Samples seen through others: a window of rows, chosen columns, columns of several. Closing closes what lies below. */
final class SampleViews {
    private SampleViews() {}

    /** Rows {@code first} to {@code first + count - 1}. */
    static Samples window(Samples below, long first, long count) {
        Objects.checkFromIndexSize(first, count, below.sampleCount());
        return new Samples() {
            @Override
            public int channelCount() {
                return below.channelCount();
            }

            @Override
            public long sampleCount() {
                return count;
            }

            @Override
            public void read(int channel, long firstSample, double[] target, int offset, int number)
                    throws IOException {
                Objects.checkFromIndexSize(firstSample, number, count);
                below.read(channel, first + firstSample, target, offset, number);
            }

            @Override
            public Optional<CountScale> counts(int channel) {
                return below.counts(channel);
            }

            @Override
            public void close() throws IOException {
                below.close();
            }
        };
    }

    /** Chosen columns, each multiplied by its factor. */
    static Samples columns(Samples below, List<ColumnChoice.Chosen> chosen) {
        return new Samples() {
            @Override
            public int channelCount() {
                return chosen.size();
            }

            @Override
            public long sampleCount() {
                return below.sampleCount();
            }

            @Override
            public void read(int channel, long firstSample, double[] target, int offset, int count) throws IOException {
                ColumnChoice.Chosen column = chosen.get(channel);
                below.read(column.column(), firstSample, target, offset, count);
                for (int i = offset; i < offset + count; i++) {
                    target[i] *= column.factor();
                }
            }

            @Override
            public Optional<CountScale> counts(int channel) {
                ColumnChoice.Chosen column = chosen.get(channel);
                return below.counts(column.column()).map(scale -> scale.times(column.factor()));
            }

            @Override
            public Optional<BlockExtremes> extremes(int channel) {
                ColumnChoice.Chosen column = chosen.get(channel);
                return column.factor() == 1 ? below.extremes(column.column()) : Optional.empty();
            }

            @Override
            public void close() throws IOException {
                below.close();
            }
        };
    }

    /** The columns of all parts, which have the same number of rows. */
    static Samples joined(List<Samples> parts) {
        return new Samples() {
            @Override
            public int channelCount() {
                return parts.stream().mapToInt(Samples::channelCount).sum();
            }

            @Override
            public long sampleCount() {
                return parts.get(0).sampleCount();
            }

            @Override
            public void read(int channel, long firstSample, double[] target, int offset, int count) throws IOException {
                int column = Objects.checkIndex(channel, channelCount());
                int part = 0;
                while (column >= parts.get(part).channelCount()) {
                    column -= parts.get(part++).channelCount();
                }
                parts.get(part).read(column, firstSample, target, offset, count);
            }

            @Override
            public Optional<CountScale> counts(int channel) {
                int column = Objects.checkIndex(channel, channelCount());
                int part = 0;
                while (column >= parts.get(part).channelCount()) {
                    column -= parts.get(part++).channelCount();
                }
                return parts.get(part).counts(column);
            }

            @Override
            public void close() throws IOException {
                Closing.all(parts.get(0), parts.subList(1, parts.size()));
            }
        };
    }

    /** The instants of a time base as a column; closing it does nothing. */
    static Samples instants(TimeBase timeBase, long count) {
        return new Samples() {
            @Override
            public int channelCount() {
                return 1;
            }

            @Override
            public long sampleCount() {
                return count;
            }

            @Override
            public void read(int channel, long firstSample, double[] target, int offset, int number)
                    throws IOException {
                timeBase.readSeconds(firstSample, target, offset, number);
            }

            @Override
            public void close() {
                // whoever owns the time base closes it
            }
        };
    }
}
