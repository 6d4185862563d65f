// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.List;
import java.util.Optional;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.sensor.Sensor;

/**
 * A capture compared with one sensor.
 *
 * @param sensor the sensor
 * @param match which channel of the capture stands for which of the sensor
 * @param verdict what it comes to
 * @param lines all limits and counts, judged or not
 * @param agreement empty unless the sensor text has it and two channels could be compared
 * @param agreementAbsent why there is no agreement, a sentence without a full stop; empty if there is one
 * @param absentLimits what the sensor text leaves open and nothing was therefore judged on, a phrase each
 * @param suspects the most likely first; their weights sum to 1
 * @param nextMeasurement what would tell more, a sentence
 * @param measurement what was measured
 */
public record CheckResult(
        Sensor sensor,
        ChannelMatch match,
        Verdict verdict,
        List<Line> lines,
        Optional<AgreementResult> agreement,
        String agreementAbsent,
        List<String> absentLimits,
        List<Suspect> suspects,
        String nextMeasurement,
        CaptureMeasurement measurement) {
    /** Copies the lists. */
    public CheckResult {
        lines = List.copyOf(lines);
        absentLimits = List.copyOf(absentLimits);
        suspects = List.copyOf(suspects);
    }
}
