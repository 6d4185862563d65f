// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.List;
import java.util.Optional;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Fault;
import org.dutywright.simulation.Quantisation;
import org.dutywright.simulation.Recording;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.Supply;

/** One recorded column, sample by sample: voltage, noise, converter. Needs the same memory for any duration. */
public final class Signal {

    private final Recording recording;
    private final VoltageOverTime voltage;
    private final Noise noise;
    private final SignalTruth truth;
    private long nextInstant;

    private Signal(Recording recording, VoltageOverTime voltage, Noise noise, SignalTruth truth) {
        this.recording = recording;
        this.voltage = voltage;
        this.noise = noise;
        this.truth = truth;
    }

    /** The signal of a channel of the sensor. */
    public static Signal of(Scenario scenario, ChannelModel channel) {
        Recording recording = scenario.recording();
        double start = recording.startSeconds();
        double end = recording.endSeconds();
        List<Fault> faults = scenario.faultsOf(channel.name());
        SignalTruth truth = new SignalTruth(recording);
        EdgeSource edges = new Carrier(scenario, channel, truth);
        edges = new MissingPulses(edges, channel, faults, end, truth);
        edges = new Runts(edges, channel, faults, end, truth);
        edges = new Bounces(edges, channel, faults, scenario.seed(), truth);
        edges = new ExtraPulses(edges, channel, faults, truth);
        edges = new HiddenPulses(edges, channel, faults, end, truth);
        Levels levels = new Levels(channel, faults, start);
        StaticFaults.tell(channel, faults, recording, truth);
        return new Signal(
                recording,
                new Waveform(channel, edges, levels, faults, start),
                new Noise(scenario.seed(), channel.name(), channel.noiseVolts(), faults, start),
                truth);
    }

    /** The recorded supply voltage. */
    public static Signal of(Scenario scenario, Supply supply) {
        Recording recording = scenario.recording();
        String name = supply.recordedAs().orElseThrow();
        return new Signal(
                recording,
                new SupplyLine(scenario, supply),
                new Noise(scenario.seed(), name, supply.noiseVolts(), List.of(), recording.startSeconds()),
                new SignalTruth(recording));
    }

    /** Index of the first sample instant that can still be read. */
    public long nextInstant() {
        return nextInstant;
    }

    /**
     * The next samples.
     *
     * @param firstInstant index of the first sample instant, not below {@link #nextInstant()}
     * @throws IllegalArgumentException if that instant was passed before
     */
    public void read(long firstInstant, double[] target, int offset, int count) {
        if (firstInstant < nextInstant) {
            throw new IllegalArgumentException("instant " + firstInstant + " is behind " + nextInstant);
        }
        Optional<Quantisation> quantisation = recording.quantisation();
        for (int i = 0; i < count; i++) {
            double seconds = recording.secondsAt(firstInstant + i);
            target[offset + i] = voltage.voltsAt(seconds) + noise.voltsAt(firstInstant + i, seconds);
        }
        if (quantisation.isPresent()) {
            Quantisation steps = quantisation.get();
            for (int i = offset; i < offset + count; i++) {
                target[i] = steps.quantise(target[i]);
            }
        }
        nextInstant = firstInstant + count;
    }

    /** The truth about the whole channel; no more samples can be read. */
    public SignalTruth finish() {
        voltage.finish();
        nextInstant = Long.MAX_VALUE;
        return truth;
    }
}
