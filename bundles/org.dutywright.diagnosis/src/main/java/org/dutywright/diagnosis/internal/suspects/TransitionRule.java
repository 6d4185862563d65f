// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.ArrayList;
import java.util.List;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.diagnosis.internal.lines.Say;

/**
 * Transitions longer than the sensor's: a slow rise alone is the pull-up's, a slow fall alone the path that pulls
 * down (common practice, no source). Where the high level is low too, the levels speak for themselves.
 */
final class TransitionRule implements Rule {
    @Override
    public List<Finding> findings(Evidence evidence) {
        List<Finding> findings = new ArrayList<>();
        for (ChannelEvidence channel : evidence.channels()) {
            boolean rise = channel.fails("transition.rise");
            boolean fall = channel.fails("transition.fall");
            if (rise || fall) {
                findings.addAll(slow(channel, rise, fall));
            }
        }
        return findings;
    }

    private static List<Finding> slow(ChannelEvidence channel, boolean rise, boolean fall) {
        List<String> name = List.of(channel.name());
        String facts = fact(channel, "transition.rise", "rising") + " " + fact(channel, "transition.fall", "falling");
        if (rise && fall) {
            return List.of(
                    Finding.of(Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, name, 3).because(facts),
                    Finding.of(Place.MODULE_INPUT, name, 2)
                            .because(facts, "A filter at the input slows both transitions."),
                    Finding.of(Place.RECORDING, name, 2)
                            .because(facts, "A recording with too little bandwidth slows both transitions."));
        }
        if (rise) {
            return List.of(
                    Finding.of(Place.MODULE_INPUT, Kind.WEAK_PULL_UP, name, 6)
                            .because(facts, "Only the pull-up lifts the line; the output that pulls it down is fast."),
                    Finding.of(Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, name, 2)
                            .because(facts, "A wet or long wire loads the pull-up."),
                    Finding.of(Place.SENSOR, name, 0.7).because(facts));
        }
        return List.of(
                Finding.of(Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, name, 5)
                        .because(facts, "Resistance in the path slows only the transition that the output drives."),
                Finding.of(Place.SENSOR, name, 2).because(facts, "A weak output pulls down slowly."),
                Finding.of(Place.GROUND, Kind.HIGH_RESISTANCE, name, 1).because(facts));
    }

    private static String fact(ChannelEvidence channel, String item, String direction) {
        Line line = channel.lines().get(item);
        if (line == null || line.measured().isEmpty()) {
            return "The " + direction + " transition of " + channel.name() + " was not measured.";
        }
        return "The " + direction + " transition of " + channel.name() + " takes "
                + Say.amount(line.measured().getAsDouble(), "s") + ", at most "
                + Say.amount(line.upper().orElseThrow(), "s") + " are allowed.";
    }
}
