// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.diagnosis.internal.lines.Say;

/** What is connected to what: leads of the recording, and wires that touch each other. */
final class ConnectionRules {
    private ConnectionRules() {}

    /** Exchanged leads or a channel counted on its other state; asked before any sensor is blamed. */
    static List<Finding> leads(Evidence evidence) {
        return evidence.leads()
                .map(fit -> List.of(
                        Finding.of(Place.RECORDING, Kind.SWAPPED_LEADS, fit.channels(), 9)
                                .because(fit.sentence()),
                        Finding.of(Place.SIGNAL_WIRE, Kind.SWAPPED_LEADS, fit.channels(), 1.5)
                                .because(fit.sentence(), "Wires exchanged in the harness look the same."),
                        Finding.of(Place.SENSOR, fit.channels(), 0.7)
                                .because(
                                        fit.sentence(),
                                        "Another part than the sensor text describes might do so too.")))
                .orElse(List.of());
    }

    /** Channels with carriers of their own that show the same edges. */
    static List<Finding> touchingWires(Evidence evidence) {
        List<Finding> findings = new ArrayList<>();
        for (PairEvidence pair : evidence.pairs()) {
            if (!pair.samePattern()) {
                continue;
            }
            SharedEdges edges = pair.edges();
            List<String> names = List.of(pair.first().name(), pair.second().name());
            String fact = String.format(
                    Locale.ROOT,
                    "%d of %d edges of %s come within %s of an edge of %s; chance alone gives %.0f %%.",
                    edges.shared(),
                    edges.edges(),
                    pair.first().name(),
                    Say.amount(edges.toleranceSeconds(), "s"),
                    pair.second().name(),
                    100 * edges.expectedShare());
            findings.add(Finding.of(Place.SIGNAL_WIRE, Kind.SHORT_BETWEEN_CHANNELS, names, 9)
                    .because(fact, "Wires that touch carry one pattern."));
            findings.add(Finding.of(Place.RECORDING, names, 2)
                    .because(fact, "Both leads of the recording on one wire show the same."));
            findings.add(Finding.of(Place.MODULE_INPUT, Kind.SHORT_BETWEEN_CHANNELS, names, 1)
                    .because(fact));
            findings.add(Finding.of(Place.SENSOR, Kind.SHORT_BETWEEN_CHANNELS, names, 1)
                    .because(fact));
        }
        return findings;
    }
}
