// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.pulse.EventKind;

/**
 * Channels that differ each time at the same place of the travel, with levels in order: a worn spot of the one that
 * jumps (common practice, no source).
 */
final class WornSpotRule implements Rule {
    @Override
    public List<Finding> findings(Evidence evidence) {
        if (evidence.leads().isPresent() || evidence.tiedTogether()) {
            return List.of();
        }
        return evidence.pairs().stream()
                .filter(it -> it.first().levelsPerfect() && it.second().levelsPerfect())
                .filter(it -> evidence.disagree()
                        || it.first().fails("duty")
                        || it.second().fails("duty")
                        || it.first().fails("events.duty-jump")
                        || it.second().fails("events.duty-jump"))
                .flatMap(it -> spot(it, evidence).stream())
                .toList();
    }

    private static List<Finding> spot(PairEvidence pair, Evidence evidence) {
        double limit =
                evidence.sensor().agreement().map(it -> it.tolerancePercent()).orElse(4.0);
        long first = pair.first().count(EventKind.DUTY_JUMP);
        long second = pair.second().count(EventKind.DUTY_JUMP);
        Optional<TravelProfile.Spot> found = place(pair.travel(), first, second, limit / 2);
        if (found.isEmpty()) {
            return List.of();
        }
        List<String> names = first == second
                ? List.of(pair.first().name(), pair.second().name())
                : List.of(first > second ? pair.first().name() : pair.second().name());
        String place = sentence(found.get());
        String jumps = String.format(
                Locale.ROOT,
                "%s has %d duty jumps, %s has %d.",
                pair.first().name(),
                first,
                pair.second().name(),
                second);
        return List.of(
                Finding.of(Place.SENSOR, Kind.WORN_SPOT, names, 12)
                        .because(place)
                        .because(first + second > 0 ? jumps : "")
                        .although(first == second ? jumps + " They do not tell which of the two it is." : ""),
                Finding.of(Place.SIGNAL_WIRE, Kind.INTERMITTENT, names, 0.6)
                        .because(jumps)
                        .although(place, "A contact in the wiring does not depend on the travel."));
    }

    private static String sentence(TravelProfile.Spot spot) {
        return String.format(
                Locale.ROOT,
                "Between %.0f and %.0f %% of travel the channels differ by %.1f %% more than elsewhere, on %d passes;"
                        + " the recording covers %.0f %% of travel.",
                spot.fromPercent(),
                spot.toPercent(),
                Math.abs(spot.differencePercent()),
                spot.visits(),
                spot.coveredPercent());
    }

    /**
     * Where it is, by the travel of the channel that jumps less: the other's is off just there. If the jumps do not
     * tell, by that of the one over which the difference is more concentrated.
     */
    private static Optional<TravelProfile.Spot> place(
            TravelDifference travel, long firstJumps, long secondJumps, double leastPercent) {
        Optional<TravelProfile.Spot> overFirst = travel.overFirst().spot(leastPercent);
        Optional<TravelProfile.Spot> overSecond = travel.overSecond().spot(leastPercent);
        if (firstJumps != secondJumps) {
            return firstJumps > secondJumps ? overSecond : overFirst;
        }
        if (overFirst.isEmpty() || overSecond.isEmpty()) {
            return overFirst.or(() -> overSecond);
        }
        return Math.abs(overFirst.get().differencePercent())
                        > Math.abs(overSecond.get().differencePercent())
                ? overFirst
                : overSecond;
    }
}
