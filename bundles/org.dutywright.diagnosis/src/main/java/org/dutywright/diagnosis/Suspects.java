// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.sensor.Sensor;

/** Ranks the likely places of a fault by the evidence of one recording. */
public final class Suspects {
    private Suspects() {}

    /**
     * The ranking.
     *
     * @param suspects the most likely first, at least one; weights sum to 1
     * @param nextMeasurement what would tell more, a sentence
     */
    public record Ranking(List<Suspect> suspects, String nextMeasurement) {
        /** Copies the list. */
        public Ranking {
            suspects = List.copyOf(suspects);
        }
    }

    /**
     * Ranks.
     *
     * @param progress asked for cancelling only
     */
    public static Ranking rank(
            CaptureMeasurement measurement,
            Sensor sensor,
            ChannelMatch match,
            Verdict verdict,
            List<Line> lines,
            Optional<AgreementResult> agreement,
            Progress progress)
            throws IOException {
        progress.checkCancelled();
        List<String> facts = new ArrayList<>();
        lines.stream()
                .filter(line -> line.result() == LineResult.FAIL || line.result() == LineResult.INCONCLUSIVE)
                .forEach(line -> facts.add(line.item() + ": " + line.reason()));
        if (verdict == Verdict.CONFORMS) {
            long passed = lines.stream()
                    .filter(line -> line.result() == LineResult.PASS)
                    .count();
            Suspect none = new Suspect(
                    Suspect.Place.NONE,
                    Optional.empty(),
                    List.of(),
                    1,
                    List.of("All " + passed + " judged lines pass."),
                    List.of());
            return new Ranking(
                    List.of(none), "No further measurement is called for by this recording of " + sensor.id() + ".");
        }
        List<Suspect> suspects = new ArrayList<>();
        for (Suspect.Place place :
                List.of(Suspect.Place.SENSOR, Suspect.Place.SIGNAL_WIRE, Suspect.Place.MODULE_INPUT)) {
            suspects.add(new Suspect(place, Optional.empty(), List.of(), 1.0 / 3, facts, List.of()));
        }
        return new Ranking(
                suspects,
                "Record the same signals at the sensor's connector, following the maker's procedure, and compare.");
    }
}
