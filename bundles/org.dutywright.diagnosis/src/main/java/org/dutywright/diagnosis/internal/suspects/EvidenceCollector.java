// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.AgreementResult;
import org.dutywright.diagnosis.ChannelMatch;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.Verdict;
import org.dutywright.diagnosis.internal.agreement.TravelChannel;
import org.dutywright.diagnosis.internal.lines.Lines;
import org.dutywright.diagnosis.internal.lines.SupplyVoltage;
import org.dutywright.diagnosis.internal.suspects.Evidence.SupplyDips;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.ChannelPlan.Travel;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Role;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.Duty;
import org.dutywright.sensor.Sensor.SensorChannel;

/** Gathers the evidence of one check. */
public final class EvidenceCollector {
    /** Edges of one pattern on two channels are sampled at the same instants, so two steps apart are not the same. */
    private static final double SHARED_EDGE_STEPS = 2;

    private static final double DIP_SHARE = 0.9;

    private final CaptureMeasurement measurement;
    private final Progress progress;

    private EvidenceCollector(CaptureMeasurement measurement, Progress progress) {
        this.measurement = measurement;
        this.progress = progress;
    }

    static Evidence collect(
            CaptureMeasurement measurement,
            Sensor sensor,
            ChannelMatch match,
            Verdict verdict,
            List<Line> lines,
            Optional<AgreementResult> agreement,
            Progress progress)
            throws IOException {
        EvidenceCollector collector = new EvidenceCollector(measurement, progress);
        List<ChannelEvidence> channels = collector.channels(sensor, match, lines);
        Map<String, List<LevelMove>> moves = new HashMap<>();
        for (ChannelEvidence channel : channels) {
            moves.put(channel.name(), LevelMove.of(measurement.capture(), channel.measured()));
        }
        Optional<ChannelMeasurement> supply =
                SupplyVoltage.find(measurement, OptionalDouble.empty()).channel();
        return new Evidence(
                sensor,
                verdict,
                lines,
                agreement,
                channels,
                collector.pairs(channels),
                moves,
                LeadFitter.find(channels, progress),
                measurement.fitness().stream()
                        .filter(it -> it.grade() != Fitness.Grade.GOOD)
                        .toList(),
                supply,
                collector.dips(channels, supply));
    }

    private List<ChannelEvidence> channels(Sensor sensor, ChannelMatch match, List<Line> lines) throws IOException {
        Map<SensorChannel, ChannelMeasurement> found = new LinkedHashMap<>();
        for (SensorChannel channel : sensor.channels()) {
            Lines.measured(measurement, match, channel)
                    .filter(it -> it.role() == Role.PWM)
                    .ifPresent(it -> found.put(channel, it));
        }
        List<ChannelEvidence> channels = new ArrayList<>();
        for (Map.Entry<SensorChannel, ChannelMeasurement> entry : found.entrySet()) {
            ChannelMeasurement measured = entry.getValue();
            List<ChannelMeasurement> others = found.values().stream()
                    .filter(it -> !it.channel().equals(measured.channel()))
                    .toList();
            channels.add(new ChannelEvidence(
                    entry.getKey(),
                    measured,
                    linesOf(entry.getKey().name(), lines),
                    InterruptionFinder.of(measurement.capture(), measured, others, progress)));
        }
        return channels;
    }

    private static Map<String, Line> linesOf(String name, List<Line> lines) {
        Map<String, Line> own = new HashMap<>();
        for (Line line : lines) {
            if (line.item().startsWith(name + ".")) {
                own.put(line.item().substring(name.length() + 1), line);
            }
        }
        return own;
    }

    private List<PairEvidence> pairs(List<ChannelEvidence> channels) throws IOException {
        List<ChannelEvidence> usable = channels.stream()
                .filter(it -> it.ok() && it.spec().duty().isPresent())
                .toList();
        List<PairEvidence> pairs = new ArrayList<>();
        for (int i = 0; i < usable.size(); i++) {
            for (int k = i + 1; k < usable.size(); k++) {
                pairs.add(pair(usable.get(i), usable.get(k)));
            }
        }
        return pairs;
    }

    private PairEvidence pair(ChannelEvidence first, ChannelEvidence second) throws IOException {
        Capture capture = measurement.capture();
        double tolerance = SHARED_EDGE_STEPS * capture.timeBase().stepSeconds();
        return new PairEvidence(
                first,
                second,
                TravelDifference.of(travel(first), travel(second), progress),
                SharedEdges.count(
                        first.measured().cycles(),
                        second.measured().cycles(),
                        tolerance,
                        second.periodSeconds(),
                        progress));
    }

    static TravelChannel travel(ChannelEvidence channel) {
        Duty duty = channel.spec().duty().orElseThrow();
        return new TravelChannel(
                channel.name(),
                channel.measured().cycles(),
                new Travel(duty.releasedPercent(), duty.pressedPercent()),
                channel.periodSeconds());
    }

    private SupplyDips dips(List<ChannelEvidence> channels, Optional<ChannelMeasurement> supply) throws IOException {
        if (supply.isEmpty()) {
            return new SupplyDips(0, 0);
        }
        SampleProbe probe =
                SampleProbe.of(measurement.capture(), supply.get().channel().name());
        double usual = supply.get().level().orElseThrow().mean().value();
        int dipped = 0;
        int looked = 0;
        List<Interruption> all = channels.stream()
                .flatMap(it -> it.interruptions().stream())
                .filter(Interruption::together)
                .toList();
        for (Interruption interruption : all) {
            OptionalDouble volts = probe.lowest(interruption.span());
            if (volts.isPresent()) {
                looked++;
                dipped += volts.getAsDouble() < DIP_SHARE * usual ? 1 : 0;
            }
        }
        return new SupplyDips(dipped, looked);
    }
}
