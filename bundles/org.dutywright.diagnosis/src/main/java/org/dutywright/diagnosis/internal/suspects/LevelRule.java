// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.diagnosis.internal.lines.Say;
import org.dutywright.pulse.StateLevels;

/**
 * State levels beyond their limits or moving. A low level lifted on all channels by the same amount: the ground; on
 * one: its wire. A low high level: the pull-up, or the supply if on all (common practice, no source).
 */
final class LevelRule implements Rule {
    /** Lifts that differ by less than this share are the same. */
    private static final double SAME_LIFT = 0.2;

    @Override
    public List<Finding> findings(Evidence evidence) {
        List<Finding> findings = new ArrayList<>();
        low(evidence, findings);
        high(evidence, findings);
        moves(evidence, findings);
        return findings;
    }

    private static void low(Evidence evidence, List<Finding> findings) {
        List<ChannelEvidence> lifted = evidence.channels().stream()
                .filter(it -> it.failsAbove("lowLevel"))
                .toList();
        if (lifted.isEmpty()) {
            return;
        }
        ChannelEvidence first = lifted.get(0);
        double volts = lowVolts(first);
        List<ChannelEvidence> others = evidence.othersThan(first).stream()
                .filter(it -> it.measured().levels().isPresent())
                .toList();
        boolean common = !others.isEmpty()
                && others.stream().allMatch(it -> Math.abs(lowVolts(it) - volts) <= SAME_LIFT * Math.abs(volts));
        if (common) {
            findings.addAll(liftedTogether(evidence, lowFact(evidence.channels())));
        } else if (others.isEmpty()) {
            List<String> name = List.of(first.name());
            String fact = lowFact(lifted);
            findings.add(Finding.of(Place.GROUND, Kind.HIGH_RESISTANCE, name, 3).because(fact));
            findings.add(
                    Finding.of(Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, name, 3).because(fact));
            findings.add(Finding.of(Place.SENSOR, name, 1.5).because(fact));
        } else {
            lifted.forEach(it -> findings.addAll(liftedAlone(it, lowFact(evidence.channels()))));
        }
    }

    private static List<Finding> liftedTogether(Evidence evidence, String fact) {
        List<String> names =
                evidence.channels().stream().map(ChannelEvidence::name).toList();
        return List.of(
                Finding.of(Place.GROUND, Kind.HIGH_RESISTANCE, names, 9)
                        .because(fact, "The low levels of all channels are lifted by about the same amount."),
                Finding.of(Place.RECORDING, names, 1.5)
                        .because(fact, "A recording's reference clipped to another ground lifts all channels alike."),
                Finding.of(Place.SENSOR, names, 0.7).because(fact).although(fact, "All channels are lifted alike."));
    }

    private static List<Finding> liftedAlone(ChannelEvidence channel, String fact) {
        List<String> name = List.of(channel.name());
        String slower = channel.fails("transition.fall") && !channel.fails("transition.rise")
                ? "Its falling transition is slow and its rising one is not."
                : "";
        return List.of(
                Finding.of(Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, name, slower.isEmpty() ? 6 : 8)
                        .because(fact, slower, "The low level of " + channel.name() + " alone is lifted."),
                Finding.of(Place.SENSOR, name, 2).because(fact, "A weak output does not pull down to ground."),
                Finding.of(Place.GROUND, Kind.HIGH_RESISTANCE, name, 0.7)
                        .because(fact)
                        .although(fact, "The other channel's low level is not lifted alike."));
    }

    private static void high(Evidence evidence, List<Finding> findings) {
        List<ChannelEvidence> low = evidence.channels().stream()
                .filter(it -> it.failsBelow("highLevel"))
                .toList();
        List<ChannelEvidence> above = evidence.channels().stream()
                .filter(it -> it.failsAbove("highLevel"))
                .toList();
        boolean all = evidence.channels().size() > 1
                && low.size() == evidence.channels().size();
        for (ChannelEvidence channel : low) {
            findings.addAll(sagging(channel, all));
        }
        for (ChannelEvidence channel : above) {
            findings.addAll(raised(channel, above.size() == evidence.channels().size()));
        }
    }

    private static List<Finding> sagging(ChannelEvidence channel, boolean all) {
        List<String> name = List.of(channel.name());
        String fact = highFact(channel);
        if (channel.fails("transition.rise") && !channel.fails("transition.fall")) {
            return List.of(
                    Finding.of(Place.MODULE_INPUT, Kind.WEAK_PULL_UP, name, 8)
                            .because(fact, "Its rising transition is slow and its falling one is not."),
                    Finding.of(Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, name, 1.5)
                            .because(fact),
                    Finding.of(Place.SENSOR, name, 0.7).because(fact));
        }
        if (all) {
            return List.of(
                    Finding.of(Place.SUPPLY, Kind.HIGH_RESISTANCE, name, 4)
                            .because(fact, "The high levels of all channels are low."),
                    Finding.of(Place.MODULE_INPUT, Kind.WEAK_PULL_UP, name, 1.5).because(fact),
                    Finding.of(Place.RECORDING, name, 0.7)
                            .because(fact, "A wrong scale of the recording lowers all levels."));
        }
        return List.of(
                Finding.of(Place.MODULE_INPUT, Kind.WEAK_PULL_UP, name, 4).because(fact),
                Finding.of(Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, name, 3)
                        .because(fact, "Leakage from the wire to ground loads the pull-up."),
                Finding.of(Place.SENSOR, name, 1.5).because(fact));
    }

    private static List<Finding> raised(ChannelEvidence channel, boolean all) {
        List<String> name = List.of(channel.name());
        String fact = highFact(channel);
        return List.of(
                Finding.of(Place.SUPPLY, name, all ? 5 : 1)
                        .because(fact)
                        .although(all ? "" : fact + " The other channel's is within its limits."),
                Finding.of(Place.SIGNAL_WIRE, Kind.SHORT_TO_SUPPLY, name, all ? 1.5 : 5)
                        .because(fact),
                Finding.of(Place.MODULE_INPUT, name, 1).because(fact),
                Finding.of(Place.RECORDING, name, 1)
                        .because(fact, "A wrong scale of the recording raises the levels."));
    }

    private static void moves(Evidence evidence, List<Finding> findings) {
        for (ChannelEvidence channel : evidence.channels()) {
            List<LevelMove> own = evidence.moves().getOrDefault(channel.name(), List.of());
            if (own.isEmpty() || !channel.fails("events.level-shift")) {
                continue;
            }
            LevelMove move =
                    own.stream().max((a, b) -> Double.compare(size(a), size(b))).orElseThrow();
            Optional<String> partner = partner(channel, move, evidence);
            findings.addAll(moved(channel, move, partner, evidence));
            if (partner.isPresent()) {
                // What moves together is told once.
                return;
            }
        }
    }

    private static double size(LevelMove move) {
        return Math.max(Math.abs(move.lowVolts()), Math.abs(move.highVolts()));
    }

    private static Optional<String> partner(ChannelEvidence channel, LevelMove move, Evidence evidence) {
        double within = 10 * channel.periodSeconds();
        return evidence.othersThan(channel).stream()
                .filter(it -> evidence.moves().getOrDefault(it.name(), List.of()).stream()
                        .anyMatch(other -> Math.abs(other.startSeconds() - move.startSeconds()) <= within
                                && Math.abs(other.lowVolts() - move.lowVolts()) <= SAME_LIFT * size(move)
                                && Math.abs(other.highVolts() - move.highVolts()) <= SAME_LIFT * size(move)))
                .map(ChannelEvidence::name)
                .findFirst();
    }

    private static List<Finding> moved(
            ChannelEvidence channel, LevelMove move, Optional<String> partner, Evidence evidence) {
        List<String> names = partner.isPresent()
                ? evidence.channels().stream().map(ChannelEvidence::name).toList()
                : List.of(channel.name());
        String fact = "At " + Say.instant(move.startSeconds()) + " the low level of " + channel.name() + " moves by "
                + Say.amount(move.lowVolts(), "V") + " and the high level by " + Say.amount(move.highVolts(), "V")
                + ".";
        String together =
                partner.map(it -> it + " moves alike at the same time.").orElse("");
        boolean single = partner.isEmpty() && evidence.channels().size() > 1;
        String againstCommon = single ? fact + " No other channel moves alike." : "";
        String againstSingle = partner.isPresent() ? fact + " " + together : "";
        double common = partner.isPresent() ? 6 : single ? 1 : 3;
        boolean lowMoves = Math.abs(move.lowVolts()) >= Math.abs(move.highVolts()) / 2;
        Finding shared = lowMoves
                ? Finding.of(Place.GROUND, Kind.HIGH_RESISTANCE, names, common)
                : Finding.of(Place.SUPPLY, Kind.INTERMITTENT, names, common);
        Finding own = lowMoves
                ? Finding.of(Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, names, partner.isPresent() ? 0.7 : 4)
                : Finding.of(Place.MODULE_INPUT, Kind.WEAK_PULL_UP, names, partner.isPresent() ? 1 : 3);
        return List.of(
                shared.because(fact, together).although(againstCommon),
                own.because(fact).although(againstSingle),
                Finding.of(Place.SENSOR, names, 1).because(fact));
    }

    private static double lowVolts(ChannelEvidence channel) {
        return channel.measured().levels().map(StateLevels::low).orElseThrow().value();
    }

    private static String lowFact(List<ChannelEvidence> channels) {
        List<String> parts = channels.stream()
                .filter(it -> it.measured().levels().isPresent())
                .map(it -> Say.amount(lowVolts(it), "V") + " on " + it.name())
                .toList();
        return "The low level is " + String.join(", ", parts) + ".";
    }

    private static String highFact(ChannelEvidence channel) {
        double volts =
                channel.measured().levels().map(StateLevels::high).orElseThrow().value();
        return "The high level is " + Say.amount(volts, "V") + " on " + channel.name() + ".";
    }
}
