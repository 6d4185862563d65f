// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.internal.suspects.Ranker;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.sensor.Sensor;

/**
 * Ranks the likely places of a fault by the evidence of one recording. Small rules give points to places, by what
 * the trade knows of how faults show in a waveform; a suspect's weight is its share of all points. A weight orders
 * the places and says how far they are apart; it is no probability.
 */
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
        return Ranker.rank(measurement, sensor, match, verdict, lines, agreement, progress);
    }
}
