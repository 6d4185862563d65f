// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.AgreementResult;
import org.dutywright.diagnosis.ChannelMatch;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.diagnosis.Suspect;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.diagnosis.Suspects.Ranking;
import org.dutywright.diagnosis.Verdict;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.sensor.Sensor;

/** Asks all rules and turns their points into weights. */
public final class Ranker {
    private static final List<Rule> RULES = List.of(
            ConnectionRules::leads,
            ConnectionRules::touchingWires,
            new StuckRule(),
            new InterruptionRule(),
            new DisturbanceRule(),
            new LevelRule(),
            new TransitionRule(),
            new FrequencyRule(),
            new DutyRule(),
            new WornSpotRule(),
            new RecordingRule());

    private Ranker() {}

    /** Ranks; see {@link org.dutywright.diagnosis.Suspects#rank}. */
    public static Ranking rank(
            CaptureMeasurement measurement,
            Sensor sensor,
            ChannelMatch match,
            Verdict verdict,
            List<Line> lines,
            Optional<AgreementResult> agreement,
            Progress progress)
            throws IOException {
        if (verdict == Verdict.CONFORMS) {
            return ranking(List.of(nothing(lines, agreement)), Optional.empty());
        }
        Evidence evidence = EvidenceCollector.collect(measurement, sensor, match, verdict, lines, agreement, progress);
        List<Finding> findings = new ArrayList<>();
        RULES.forEach(rule -> findings.addAll(rule.findings(evidence)));
        if (findings.isEmpty()) {
            findings.addAll(unexplained(evidence));
        }
        return ranking(findings, Optional.of(evidence));
    }

    private static Finding nothing(List<Line> lines, Optional<AgreementResult> agreement) {
        long passed =
                lines.stream().filter(it -> it.result() == LineResult.PASS).count();
        return Finding.of(Place.NONE, List.of(), 1)
                .because("All " + passed + " lines that could be judged pass.")
                .because(agreement
                        .map(it -> String.format(
                                Locale.ROOT,
                                "The channels differ by %.2f %% of travel at most.",
                                it.maxDifferencePercent()))
                        .orElse(""));
    }

    /** No rule knows the picture: what fails is named, and no place is put before another. */
    private static List<Finding> unexplained(Evidence evidence) {
        List<String> facts = new ArrayList<>(evidence.lines().stream()
                .filter(it -> it.result() == LineResult.FAIL || it.result() == LineResult.INCONCLUSIVE)
                .map(it -> it.item() + ": " + it.reason() + ".")
                .toList());
        if (facts.isEmpty()) {
            return List.of(Finding.of(Place.RECORDING, List.of(), 1)
                    .because("None of the " + evidence.lines().size() + " lines could be judged."));
        }
        List<Finding> findings = new ArrayList<>();
        for (Place place : List.of(Place.SENSOR, Place.SIGNAL_WIRE, Place.SUPPLY, Place.MODULE_INPUT)) {
            Finding finding = Finding.of(place, List.of(), 1);
            for (String fact : facts) {
                finding = finding.because(fact);
            }
            findings.add(finding);
        }
        return findings;
    }

    private record Key(Place place, Optional<Kind> kind, List<String> channels) {}

    private static Ranking ranking(List<Finding> findings, Optional<Evidence> evidence) {
        Map<Key, Finding> merged = new LinkedHashMap<>();
        for (Finding finding : findings) {
            merged.merge(new Key(finding.place(), finding.kind(), finding.channels()), finding, Finding::and);
        }
        double total = merged.values().stream().mapToDouble(Finding::points).sum();
        List<Suspect> suspects = merged.values().stream()
                .sorted(Comparator.comparingDouble(Finding::points).reversed())
                .map(it -> new Suspect(
                        it.place(),
                        it.kind(),
                        it.channels(),
                        it.points() / total,
                        it.reasonsFor(),
                        it.reasonsAgainst()))
                .toList();
        return new Ranking(suspects, NextMeasurement.of(suspects, evidence));
    }
}
