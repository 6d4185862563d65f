// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;

/**
 * What one rule thinks of one place. Points: about 1 for a place that the facts do not exclude, 3 for one they point
 * to, 9 for one they tell apart from the others; the weight of a suspect is its share of all points.
 *
 * @param place where
 * @param kind what it would be there, empty if nothing tells
 * @param channels the channels concerned
 * @param points how much the facts speak for it, above 0
 * @param reasonsFor sentences with the measured facts
 * @param reasonsAgainst likewise
 */
record Finding(
        Place place,
        Optional<Kind> kind,
        List<String> channels,
        double points,
        List<String> reasonsFor,
        List<String> reasonsAgainst) {

    static Finding of(Place place, Kind kind, List<String> channels, double points) {
        return new Finding(place, Optional.of(kind), channels, points, List.of(), List.of());
    }

    static Finding of(Place place, List<String> channels, double points) {
        return new Finding(place, Optional.empty(), channels, points, List.of(), List.of());
    }

    /**
     * With one more reason that speaks for it.
     *
     * @param sentences a measured fact and what follows from it; empty ones are left out, and without any there is
     *     no reason
     */
    Finding because(String... sentences) {
        return new Finding(place, kind, channels, points, with(reasonsFor, sentences), reasonsAgainst);
    }

    /** With one more reason that speaks against it. */
    Finding although(String... sentences) {
        return new Finding(place, kind, channels, points, reasonsFor, with(reasonsAgainst, sentences));
    }

    /** Together with what another rule thinks of the same. */
    Finding and(Finding other) {
        return new Finding(
                place,
                kind,
                channels,
                points + other.points,
                distinct(reasonsFor, other.reasonsFor),
                distinct(reasonsAgainst, other.reasonsAgainst));
    }

    private static List<String> with(List<String> reasons, String... sentences) {
        String reason =
                Stream.of(sentences).filter(it -> !it.isEmpty()).distinct().collect(Collectors.joining(" "));
        return reason.isEmpty() ? reasons : distinct(reasons, List.of(reason));
    }

    private static List<String> distinct(List<String> first, List<String> more) {
        return Stream.concat(first.stream(), more.stream()).distinct().toList();
    }
}
