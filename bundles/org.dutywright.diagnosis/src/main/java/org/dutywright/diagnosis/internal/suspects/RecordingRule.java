// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.ArrayList;
import java.util.List;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.diagnosis.Verdict;
import org.dutywright.pulse.Fitness;

/** A recording that cannot carry the verdict, and lines that nothing but a better recording could decide. */
final class RecordingRule implements Rule {
    @Override
    public List<Finding> findings(Evidence evidence) {
        List<Finding> findings = new ArrayList<>();
        // Where something fails all the same, what fails says more than how it was recorded.
        boolean fails = evidence.verdict() == Verdict.DOES_NOT_CONFORM;
        for (Fitness finding : evidence.findings()) {
            double points = finding.grade() == Fitness.Grade.UNFIT ? 6 : 3;
            findings.add(Finding.of(Place.RECORDING, List.of(), fails ? points / 4 : points)
                    .because(sentence(finding.reason())));
        }
        if (!fails) {
            undecided(evidence, findings);
        }
        return findings;
    }

    private static void undecided(Evidence evidence, List<Finding> findings) {
        for (Line line : evidence.lines()) {
            if (line.result() != LineResult.INCONCLUSIVE) {
                continue;
            }
            String fact = line.item() + " is inconclusive: " + line.reason() + ".";
            if (line.measured().isPresent()) {
                findings.add(Finding.of(Place.NONE, List.of(), 1).because(fact, "No line fails."));
            }
            findings.add(Finding.of(Place.RECORDING, List.of(), 2).because(fact));
        }
    }

    private static String sentence(String phrase) {
        String start = phrase.isEmpty() ? phrase : Character.toUpperCase(phrase.charAt(0)) + phrase.substring(1);
        return start.endsWith(".") ? start : start + ".";
    }
}
