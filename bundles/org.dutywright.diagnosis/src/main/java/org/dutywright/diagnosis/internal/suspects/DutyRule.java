// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.diagnosis.internal.lines.Say;

/**
 * Duties off their limits or channels that disagree, with levels that are in order: the sensor, or what moves it if
 * all channels are wrong together (common practice, no source). Silent where exchanged leads explain it.
 */
final class DutyRule implements Rule {
    private static final List<String> DUTY_LINES = List.of("duty", "duty.released", "duty.pressed");
    /** A channel that scatters less than this in travel while the other moves by ten times as much stands still. */
    private static final double STILL_PERCENT = 0.5;

    @Override
    public List<Finding> findings(Evidence evidence) {
        List<ChannelEvidence> off = evidence.channels().stream()
                .filter(it -> DUTY_LINES.stream().anyMatch(it::fails))
                .toList();
        boolean concerned = evidence.disagree() || !off.isEmpty();
        if (!concerned || evidence.leads().isPresent() || evidence.tiedTogether()) {
            return List.of();
        }
        if (off.size() > 1 && off.size() == evidence.channels().size() && !evidence.disagree()) {
            return allOff(off);
        }
        List<Finding> findings = new ArrayList<>();
        for (PairEvidence pair : evidence.pairs()) {
            if (pair.travel().count() > 0) {
                findings.addAll(apart(pair, off, evidence));
            }
        }
        if (findings.isEmpty()) {
            off.forEach(it -> findings.addAll(oneOff(it)));
        }
        return findings;
    }

    private static List<Finding> allOff(List<ChannelEvidence> off) {
        List<String> names = off.stream().map(ChannelEvidence::name).toList();
        String facts = facts(off);
        return List.of(
                Finding.of(Place.LINKAGE, Kind.DRIFT, names, 6)
                        .because(facts, "The channels agree with each other, so both are told the same position."),
                Finding.of(Place.SENSOR, Kind.DRIFT, names, 2.5)
                        .because(facts, "A magnet that has moved shifts all channels together."),
                Finding.of(Place.RECORDING, names, 1).because(facts, "The sensor text may be that of another part."));
    }

    private static List<Finding> oneOff(ChannelEvidence channel) {
        List<String> name = List.of(channel.name());
        String facts = facts(List.of(channel));
        String levels =
                channel.levelsPerfect() ? "No level or transition of " + channel.name() + " passes a limit." : "";
        double points = channel.levelsPerfect() ? 6 : 2;
        return List.of(
                Finding.of(Place.SENSOR, Kind.DRIFT, name, points)
                        .because(facts)
                        .because(levels),
                Finding.of(Place.LINKAGE, Kind.DRIFT, name, 1.5)
                        .because(facts, "With no other channel to compare, the position itself may be off."),
                Finding.of(Place.RECORDING, name, 0.7).because(facts, "The sensor text may be that of another part."));
    }

    private static List<Finding> apart(PairEvidence pair, List<ChannelEvidence> off, Evidence evidence) {
        List<ChannelEvidence> blamed = List.of(pair.first(), pair.second()).stream()
                .filter(off::contains)
                .toList();
        List<ChannelEvidence> concerned = blamed.size() == 1 ? blamed : List.of(pair.first(), pair.second());
        List<String> names = concerned.stream().map(ChannelEvidence::name).toList();
        boolean perfect = concerned.stream().allMatch(ChannelEvidence::levelsPerfect);
        TravelDifference travel = pair.travel();
        String shape = shape(pair, evidence);
        String fact = difference(pair);
        String levels = perfect ? "No level or transition of " + String.join(" and ", names) + " passes a limit." : "";
        Finding sensor = Finding.of(Place.SENSOR, Kind.DRIFT, names, perfect ? 7 : 2)
                .because(fact)
                .because(shape)
                .because(levels);
        List<Finding> findings = new ArrayList<>();
        findings.add(
                blamed.size() == 1
                        ? sensor.because(facts(blamed))
                        : sensor.although(fact, "The recording does not tell which of the two is wrong."));
        findings.add(Finding.of(Place.LINKAGE, names, 0.7)
                .because(fact)
                .although(fact, "A linkage moves both channels alike."));
        findings.add(Finding.of(Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, names, perfect ? 0.5 : 2)
                .because(fact, "Slow edges or shifted levels move the duty.")
                .although(levels));
        if (travel.firstRangePercent() > 20 && Math.abs(travel.changeOverTravelPercent()) > 20) {
            findings.add(Finding.of(Place.RECORDING, names, 1)
                    .because(shape, "The sensor text may be that of another part."));
        }
        return findings;
    }

    private static String difference(PairEvidence pair) {
        TravelDifference travel = pair.travel();
        return String.format(
                Locale.ROOT,
                "%s reads %.1f %% of travel %s than %s on average, scattering by %.1f %%.",
                pair.first().name(),
                Math.abs(travel.meanPercent()),
                travel.meanPercent() < 0 ? "less" : "more",
                pair.second().name(),
                travel.scatterPercent());
    }

    private static String shape(PairEvidence pair, Evidence evidence) {
        TravelDifference travel = pair.travel();
        double limit =
                evidence.sensor().agreement().map(it -> it.tolerancePercent()).orElse(5.0);
        String still = still(pair);
        if (!still.isEmpty()) {
            return still;
        }
        double least = Math.min(travel.firstRangePercent(), travel.secondRangePercent());
        if (least < 10) {
            return String.format(
                    Locale.ROOT, "The travel covers only %.0f %%, so the shape of the difference is not told.", least);
        }
        if (Math.abs(travel.changeOverTravelPercent()) > limit
                && travel.scatterAroundLinePercent() < travel.scatterPercent() / 2) {
            return String.format(
                    Locale.ROOT,
                    "The difference grows in proportion, by %.1f %% over the whole travel: a wrong gain.",
                    travel.changeOverTravelPercent());
        }
        if (travel.scatterPercent() < Math.max(1, Math.abs(travel.meanPercent()) / 3)) {
            return "The difference is the same everywhere in the travel: an offset.";
        }
        return "";
    }

    private static String still(PairEvidence pair) {
        TravelDifference travel = pair.travel();
        double first = travel.firstScatterPercent();
        double second = travel.secondScatterPercent();
        if (Math.min(first, second) > STILL_PERCENT || Math.max(first, second) < 10 * STILL_PERCENT) {
            return "";
        }
        boolean firstStill = first < second;
        return String.format(
                Locale.ROOT,
                "The duty of %s stands still while %s moves over %.0f %% of travel.",
                firstStill ? pair.first().name() : pair.second().name(),
                firstStill ? pair.second().name() : pair.first().name(),
                firstStill ? travel.secondRangePercent() : travel.firstRangePercent());
    }

    private static String facts(List<ChannelEvidence> off) {
        List<String> facts = new ArrayList<>();
        for (ChannelEvidence channel : off) {
            for (String item : DUTY_LINES) {
                if (channel.fails(item)) {
                    Line line = channel.lines().get(item);
                    facts.add("The duty of " + channel.name() + " is "
                            + Say.amount(line.measured().orElseThrow(), "%")
                            + (item.equals("duty") ? " at its worst" : " " + item.substring("duty.".length()))
                            + ", allowed are " + bounds(line) + ".");
                }
            }
        }
        return String.join(" ", facts);
    }

    private static String bounds(Line line) {
        String lower = line.lower().isPresent() ? Say.amount(line.lower().getAsDouble(), "%") : "any";
        String upper = line.upper().isPresent() ? Say.amount(line.upper().getAsDouble(), "%") : "any";
        return lower + " to " + upper;
    }
}
