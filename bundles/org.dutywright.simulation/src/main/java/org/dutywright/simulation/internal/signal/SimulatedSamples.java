// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Samples;
import org.dutywright.capture.Segment;
import org.dutywright.simulation.Scenario;

/**
 * The samples of a scenario, made when they are read. Reading forwards is cheap; reading backwards makes the signal
 * anew from its start. A sample's value does not depend on the order of reading.
 */
public final class SimulatedSamples implements Samples {

    private final Scenario scenario;
    private final List<Segment> segments;
    private final long sampleCount;
    private final List<Supplier<Signal>> makers = new ArrayList<>();
    private final List<Signal> signals = new ArrayList<>();
    private final List<Channel> channels = new ArrayList<>();

    /** Samples of all channels of the scenario, the recorded supply behind them. */
    public SimulatedSamples(Scenario scenario) {
        this.scenario = scenario;
        this.segments = scenario.recording().segments();
        this.sampleCount = segments.isEmpty() ? 0 : segments.getLast().endSample();
        scenario.channels().forEach(channel -> add(channel.name(), () -> Signal.of(scenario, channel)));
        scenario.supply()
                .ifPresent(supply ->
                        supply.recordedAs().ifPresent(name -> add(name, () -> Signal.of(scenario, supply))));
    }

    private void add(String name, Supplier<Signal> maker) {
        channels.add(new Channel(name, "V"));
        makers.add(maker);
        signals.add(maker.get());
    }

    /** The channels, in the order of their indices. */
    public List<Channel> channels() {
        return List.copyOf(channels);
    }

    /** The runs of samples without a gap. */
    public List<Segment> segments() {
        return segments;
    }

    @Override
    public int channelCount() {
        return channels.size();
    }

    @Override
    public long sampleCount() {
        return sampleCount;
    }

    @Override
    public synchronized void read(int channel, long firstSample, double[] target, int offset, int count) {
        Objects.checkIndex(channel, channels.size());
        Objects.checkFromIndexSize(firstSample, count, sampleCount);
        Objects.checkFromIndexSize(offset, count, target.length);
        int done = 0;
        for (Segment segment : segments) {
            long from = Math.max(firstSample + done, segment.firstSample());
            int here = (int) Math.min(count - done, segment.endSample() - from);
            if (done < count && here > 0) {
                long instant = scenario.recording().instantOf(segment) + from - segment.firstSample();
                signalFor(channel, instant).read(instant, target, offset + done, here);
                done += here;
            }
        }
    }

    private Signal signalFor(int channel, long instant) {
        if (signals.get(channel).nextInstant() > instant) {
            signals.set(channel, makers.get(channel).get());
        }
        return signals.get(channel);
    }

    /** The truth about a channel of the sensor; reading it again makes the signal anew. */
    public synchronized SignalTruth finish(int channel) {
        return signals.get(channel).finish();
    }

    @Override
    public void close() {
        // Holds nothing but memory.
    }
}
