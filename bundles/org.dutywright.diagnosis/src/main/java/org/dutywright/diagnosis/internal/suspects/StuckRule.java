// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.ArrayList;
import java.util.List;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.diagnosis.internal.lines.Say;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Status;

/**
 * A channel that stands still to the end of the recording. At one end of a wire its level cannot tell the wire from
 * the sensor or the module's input, so the points are spread (common practice, no source).
 */
final class StuckRule implements Rule {
    @Override
    public List<Finding> findings(Evidence evidence) {
        List<ChannelEvidence> high = evidence.channels().stream()
                .filter(it -> stuck(it, Status.STUCK_HIGH, EventKind.STUCK_HIGH))
                .toList();
        List<ChannelEvidence> low = evidence.channels().stream()
                .filter(it -> stuck(it, Status.STUCK_LOW, EventKind.STUCK_LOW))
                .toList();
        if (together(high, evidence)) {
            return allHigh(high);
        }
        if (together(low, evidence)) {
            return allLow(low);
        }
        List<Finding> findings = new ArrayList<>();
        high.forEach(it -> findings.addAll(oneHigh(it, evidence)));
        low.forEach(it -> findings.addAll(oneLow(it, evidence)));
        evidence.channels().stream()
                .filter(it -> it.measured().status() == Status.NO_SIGNAL)
                .forEach(it -> findings.addAll(noStates(it)));
        return findings;
    }

    private static boolean stuck(ChannelEvidence channel, Status status, EventKind kind) {
        return channel.measured().status() == status || channel.count(kind) > 0;
    }

    private static boolean together(List<ChannelEvidence> stuck, Evidence evidence) {
        if (stuck.size() < 2 || stuck.size() < evidence.channels().size()) {
            return false;
        }
        double first = startSeconds(stuck.get(0));
        double within =
                stuck.stream().mapToDouble(ChannelEvidence::periodSeconds).max().orElseThrow();
        return stuck.stream().allMatch(it -> Math.abs(startSeconds(it) - first) <= within);
    }

    /** Where the channel came to a stand; 0 for all of the recording, so that equal ones compare as equal. */
    private static double startSeconds(ChannelEvidence channel) {
        return channel.measured().events().stream()
                .filter(it -> channel.ok() && (it.kind() == EventKind.STUCK_HIGH || it.kind() == EventKind.STUCK_LOW))
                .mapToDouble(PulseEvent::startSeconds)
                .findFirst()
                .orElse(0);
    }

    private static List<Finding> allHigh(List<ChannelEvidence> stuck) {
        List<String> names = stuck.stream().map(ChannelEvidence::name).toList();
        String fact = facts(stuck, "high");
        return List.of(
                Finding.of(Place.SUPPLY, Kind.OPEN, names, 4)
                        .because(fact, "A sensor without supply pulls neither channel down."),
                Finding.of(Place.GROUND, Kind.OPEN, names, 4)
                        .because(fact, "A sensor without ground pulls neither channel down."),
                Finding.of(Place.SENSOR, names, 1)
                        .because(fact)
                        .although(fact, "Channels with outputs of their own seldom fail at one instant."),
                Finding.of(Place.SIGNAL_WIRE, Kind.OPEN, names, 1)
                        .because(fact, "A connector that is off opens both wires."));
    }

    private static List<Finding> allLow(List<ChannelEvidence> stuck) {
        List<String> names = stuck.stream().map(ChannelEvidence::name).toList();
        String fact = facts(stuck, "low");
        return List.of(
                Finding.of(Place.SUPPLY, Kind.OPEN, names, 5)
                        .because(fact, "Without supply, pull-ups and sensor are dead together."),
                Finding.of(Place.RECORDING, names, 2)
                        .because(fact, "The same is recorded with the key off or the leads not connected."),
                Finding.of(Place.GROUND, Kind.OPEN, names, 1)
                        .because(fact)
                        .although(fact, "With pull-ups in the module an open ground leaves the signals high."),
                Finding.of(Place.SENSOR, names, 1)
                        .because(fact)
                        .although(fact, "Channels with outputs of their own seldom fail at one instant."));
    }

    private static List<Finding> oneHigh(ChannelEvidence channel, Evidence evidence) {
        List<String> name = List.of(channel.name());
        String fact = facts(List.of(channel), "high");
        String oneEnd = oneEnd(channel);
        String others = othersRun(channel, evidence);
        boolean aboveOthers = aboveOthers(channel, evidence);
        double toSupply = aboveOthers ? 4 : 1.5;
        return List.of(
                Finding.of(Place.SIGNAL_WIRE, Kind.OPEN, name, 3)
                        .because(fact, "An open wire stands at the pull-up.")
                        .although(oneEnd),
                Finding.of(Place.SENSOR, name, 3)
                        .because(fact, "An output that no longer pulls down looks the same.")
                        .although(oneEnd),
                Finding.of(Place.SIGNAL_WIRE, Kind.SHORT_TO_SUPPLY, name, toSupply)
                        .because(fact, aboveOthers ? "That is above the high level of the other channel." : "")
                        .although(oneEnd),
                Finding.of(Place.MODULE_INPUT, name, 1).because(fact).although(others),
                Finding.of(Place.RECORDING, name, 0.5)
                        .because(fact, "A lead on the wrong pin would show a level without pulses."));
    }

    private static List<Finding> oneLow(ChannelEvidence channel, Evidence evidence) {
        List<String> name = List.of(channel.name());
        String fact = facts(List.of(channel), "low");
        String oneEnd = oneEnd(channel);
        String others = othersRun(channel, evidence);
        return List.of(
                Finding.of(Place.SIGNAL_WIRE, Kind.SHORT_TO_GROUND, name, 3)
                        .because(fact, "A wire that touches ground stands low.")
                        .although(oneEnd),
                Finding.of(Place.SENSOR, name, 3)
                        .because(fact, "An output that holds the line down looks the same.")
                        .although(oneEnd),
                Finding.of(Place.MODULE_INPUT, Kind.WEAK_PULL_UP, name, 2)
                        .because(fact, "Without a pull-up nothing lifts the line.")
                        .although(others),
                Finding.of(Place.SIGNAL_WIRE, Kind.OPEN, name, 1)
                        .because(fact, "An open wire stands low where the input pulls down or the lead is cut off."),
                Finding.of(Place.RECORDING, name, 0.5)
                        .because(fact, "A lead that came off records a low level without pulses."));
    }

    private static List<Finding> noStates(ChannelEvidence channel) {
        List<String> name = List.of(channel.name());
        String fact = channel.name() + " changes but has no two states: "
                + channel.measured().statusReason() + ".";
        return List.of(
                Finding.of(Place.RECORDING, name, 2).because(fact, "A lead on the wrong pin would show this."),
                Finding.of(Place.SIGNAL_WIRE, name, 2).because(fact),
                Finding.of(Place.MODULE_INPUT, name, 1).because(fact),
                Finding.of(Place.SENSOR, name, 1).because(fact));
    }

    private static String oneEnd(ChannelEvidence channel) {
        return channel.name() + " was recorded at one end only: a stuck level there cannot tell the wire from the"
                + " sensor.";
    }

    private static String facts(List<ChannelEvidence> stuck, String state) {
        StringBuilder facts = new StringBuilder();
        for (ChannelEvidence channel : stuck) {
            facts.append(facts.isEmpty() ? "" : " ")
                    .append(channel.name())
                    .append(" stands ")
                    .append(state);
            if (channel.ok()) {
                facts.append(" from ")
                        .append(Say.instant(startSeconds(channel)))
                        .append(" to the end of the recording.");
            } else {
                channel.measured()
                        .level()
                        .ifPresent(it -> facts.append(" at ")
                                .append(Say.amount(
                                        it.mean().value(),
                                        channel.measured().channel().unit())));
                facts.append(" in all of the recording.");
            }
        }
        return facts.toString();
    }

    private static String othersRun(ChannelEvidence channel, Evidence evidence) {
        List<String> running = evidence.othersThan(channel).stream()
                .filter(it -> it.ok())
                .map(ChannelEvidence::name)
                .toList();
        return running.isEmpty() ? "" : String.join(", ", running) + " runs on, so supply and ground are there.";
    }

    private static boolean aboveOthers(ChannelEvidence channel, Evidence evidence) {
        if (channel.ok() || channel.measured().level().isEmpty()) {
            return false;
        }
        double volts = channel.measured().level().get().mean().value();
        return evidence.othersThan(channel).stream()
                .filter(it -> it.measured().levels().isPresent())
                .map(it -> it.measured().levels().get())
                .anyMatch((StateLevels it) -> volts > it.high().value() + 0.05 * it.swing());
    }
}
