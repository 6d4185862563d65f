// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.UnreadableException;
import org.dutywright.diagnosis.ChannelMatch;
import org.dutywright.diagnosis.CheckResult;
import org.dutywright.diagnosis.CheckSettings;
import org.dutywright.diagnosis.Checker;
import org.dutywright.diagnosis.Position;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.report.CheckJson;
import org.dutywright.report.RunSettings;
import org.dutywright.sensor.Sensor;

/**
 * Reading, measuring and judging one capture: the way of {@code check} and of the demonstration.
 *
 * @param capture what is read and how
 * @param sensor what it is compared with
 * @param supplyVolts the supply, where the user said it
 * @param position the position, where the user said it
 * @param catalogues folders that were added to the catalogue
 */
record CheckJob(
        CaptureJob capture,
        Sensor sensor,
        OptionalDouble supplyVolts,
        Optional<Position> position,
        List<String> catalogues) {

    /** Takes the result while the cycles it rests on can be read. */
    @FunctionalInterface
    interface Receiver {
        /**
         * Takes the result.
         *
         * @param document writes it as JSON
         */
        void take(CheckResult result, OutputFile.Content document) throws IOException;
    }

    /** Does it and hands the result over. */
    void run(Session session, Receiver receiver) throws IOException, UnreadableException {
        RunSettings run = capture.runSettings(position.map(Position::word), supplyVolts, catalogues);
        try (Capture opened = capture.open(session)) {
            ChannelMatch match = Checker.match(sensor, opened, capture.plans());
            try (CaptureMeasurement measured =
                    capture.measure(opened, Checker.plans(sensor, match, capture.plans()), session)) {
                CheckResult result = Checker.check(
                        measured, sensor, match, new CheckSettings(supplyVolts, position), session.progress());
                receiver.take(result, stream -> CheckJson.write(result, run, stream));
            }
        }
    }
}
