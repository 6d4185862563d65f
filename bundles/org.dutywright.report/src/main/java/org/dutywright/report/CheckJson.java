// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;
import java.util.Optional;
import org.dutywright.diagnosis.AgreementResult;
import org.dutywright.diagnosis.CheckResult;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.Suspect;
import org.dutywright.report.internal.JsonWriter;
import org.dutywright.sensor.Sensor;

/**
 * Writes {@code dutywright.check/1}, the measurement it rests on included.
 *
 * <p>Beside the fields of the schema: {@code sensorText} with title, origin and decision rule of the sensor;
 * {@code matched} with the channel of the capture for each of the sensor's and by what they were matched;
 * {@code absentLimits} with what the sensor text leaves open; in {@code agreement} where the largest difference is,
 * the limit while moving, where the longest time beyond the limit begins, the number of instants compared, and the
 * channels. {@code agreement} is {@code null} where two channels could not be compared, and {@code agreementAbsent}
 * then says why.
 */
public final class CheckJson {
    /** Value of {@code schema}. */
    public static final String SCHEMA = "dutywright.check/1";

    private CheckJson() {}

    /**
     * Writes the document and leaves the stream open.
     *
     * @throws IllegalStateException if a number is not finite
     */
    public static void write(CheckResult check, RunSettings run, OutputStream out) throws IOException {
        try (JsonWriter json = JsonWriter.to(out)) {
            json.object(() -> {
                json.text("schema", SCHEMA);
                json.text("sensor", check.sensor().id());
                json.text("verdict", check.verdict().word());
                sensor(json, check);
                json.array("lines", () -> {
                    for (Line line : check.lines()) {
                        json.row(() -> line(json, line));
                    }
                });
                json.texts("absentLimits", check.absentLimits());
                agreement(json, check);
                json.array("suspects", () -> {
                    for (Suspect suspect : check.suspects()) {
                        json.object(() -> suspect(json, suspect));
                    }
                });
                json.text("nextMeasurement", check.nextMeasurement());
                json.object("measure", () -> MeasureJson.members(json, check.measurement(), run));
            });
        }
    }

    private static void sensor(JsonWriter json, CheckResult check) throws IOException {
        Sensor sensor = check.sensor();
        json.object("sensorText", () -> {
            json.text("title", sensor.title());
            json.text("document", sensor.origin().document());
            json.text("revision", sensor.origin().revision());
            json.text("date", sensor.origin().date());
            json.text("rule", sensor.decision().rule().word());
            json.number("coverage", sensor.decision().coverage());
        });
        json.object("matched", () -> {
            json.text("by", check.match().byName() ? "name" : "order");
            json.object("channels", () -> {
                for (Map.Entry<String, String> pair :
                        check.match().captureNames().entrySet()) {
                    json.text(pair.getKey(), pair.getValue());
                }
            });
        });
    }

    private static void line(JsonWriter json, Line line) throws IOException {
        json.text("item", line.item());
        json.number("measured", line.measured());
        json.number("u", line.u());
        json.text("unit", line.unit());
        json.number("lower", line.lower());
        json.number("upper", line.upper());
        json.number("conformityProbability", line.conformityProbability());
        json.text("result", line.result().word());
        json.text("reason", line.reason());
        json.budget(Optional.of(line.budget()));
    }

    private static void agreement(JsonWriter json, CheckResult check) throws IOException {
        if (check.agreement().isEmpty()) {
            json.absent("agreement");
            json.text("agreementAbsent", check.agreementAbsent());
            return;
        }
        AgreementResult agreement = check.agreement().get();
        json.object("agreement", () -> {
            json.number("maxDifferencePercent", agreement.maxDifferencePercent());
            json.number("limitPercent", agreement.limitPercent());
            json.number("longestBeyondLimitS", agreement.longestBeyondLimitSeconds());
            json.number("confirmationS", agreement.confirmationSeconds());
            json.truth("wouldFlag", agreement.wouldFlag());
            json.number("maxDifferenceAtS", agreement.maxDifferenceAtSeconds());
            json.number("movingLimitPercent", agreement.movingLimitPercent());
            json.number("longestStartS", agreement.longestStartSeconds());
            json.count("comparedInstants", agreement.comparedInstants());
            json.texts("channels", agreement.channels());
        });
    }

    private static void suspect(JsonWriter json, Suspect suspect) throws IOException {
        json.text("suspect", suspect.place().word());
        json.text("kind", suspect.kind().map(Suspect.Kind::word));
        json.texts("channels", suspect.channels());
        json.number("weight", suspect.weight());
        json.texts("for", suspect.reasonsFor());
        json.texts("against", suspect.reasonsAgainst());
    }
}
