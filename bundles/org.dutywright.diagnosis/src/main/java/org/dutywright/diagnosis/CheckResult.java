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
 * @param suspects the most likely first
 * @param nextMeasurement what would tell more, a sentence
 * @param measurement what was measured
 */
public record CheckResult(
        Sensor sensor,
        ChannelMatch match,
        Verdict verdict,
        List<Line> lines,
        Optional<AgreementResult> agreement,
        List<Suspect> suspects,
        String nextMeasurement,
        CaptureMeasurement measurement) {}
