// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.io.IOException;
import java.io.OutputStream;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.report.internal.CaptureJson;
import org.dutywright.report.internal.ChannelJson;
import org.dutywright.report.internal.JsonWriter;
import org.dutywright.report.internal.SettingsJson;

/**
 * Writes {@code dutywright.measure/1}: UTF-8, indented, times in seconds, voltages in volts, duty in percent. A
 * number that does not exist is {@code null}.
 *
 * <p>Beside the fields of the schema: {@code statusReason}; {@code edgeInstants} with how many transitions got their
 * instant from a fit and how many from two samples; {@code pulseSeparationS}; {@code dutyAtInputPercent} and {@code
 * pulseDurationAtInputS} at the thresholds of the module's input, where the sensor text has them; {@code
 * overshootPercent} and {@code undershootPercent} of the amplitude for {@code rise} and {@code fall}; {@code
 * rmsVoltage} over whole cycles; {@code level} with mean, min, max and RMS of all samples; {@code measurements} with
 * the results of measurements that are not built in, by id; {@code absent} with the reason for each result without a
 * number, by id; {@code periodJitterS} with u, 95 % half-width and budget of both of its numbers. A channel that is not PWM has {@code null} as its active level and its numbers of cycles. Under
 * {@code settings.measuring} each setting stands with its value, its unit and whether it differs from the default.
 */
public final class MeasureJson {
    /** Value of {@code schema}. */
    public static final String SCHEMA = "dutywright.measure/1";

    private MeasureJson() {}

    /**
     * Writes the document and leaves the stream open.
     *
     * @throws IllegalStateException if a number is not finite
     */
    public static void write(CaptureMeasurement measurement, RunSettings run, OutputStream out) throws IOException {
        try (JsonWriter json = JsonWriter.to(out)) {
            json.object(() -> members(json, measurement, run));
        }
    }

    static void members(JsonWriter json, CaptureMeasurement measurement, RunSettings run) throws IOException {
        json.text("schema", SCHEMA);
        json.object("capture", () -> CaptureJson.write(json, measurement.capture(), measurement.fitness()));
        json.object("settings", () -> SettingsJson.write(json, run, measurement.settings()));
        json.array("channels", () -> {
            for (ChannelMeasurement channel : measurement.channels()) {
                ChannelJson.write(json, channel);
            }
        });
    }
}
