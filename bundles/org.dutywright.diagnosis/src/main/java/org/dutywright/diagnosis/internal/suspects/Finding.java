// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.List;
import java.util.Optional;
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

    /** With more facts that speak for it; empty sentences are left out. */
    Finding because(String... sentences) {
        return new Finding(place, kind, channels, points, joined(reasonsFor, sentences), reasonsAgainst);
    }

    /** With more facts that speak against it; empty sentences are left out. */
    Finding although(String... sentences) {
        return new Finding(place, kind, channels, points, reasonsFor, joined(reasonsAgainst, sentences));
    }

    static List<String> joined(List<String> first, String... more) {
        return Stream.concat(first.stream(), Stream.of(more).filter(it -> !it.isEmpty()))
                .distinct()
                .toList();
    }
}
