// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Gap;
import org.dutywright.capture.Source;
import org.dutywright.pulse.Fitness;

/** The {@code capture} block: where the samples come from, when they were taken, what they can carry. */
public final class CaptureJson {
    private CaptureJson() {}

    /** Writes the members into the object that is open. */
    public static void write(JsonWriter json, Capture capture, List<Fitness> fitness) throws IOException {
        json.array("sources", () -> {
            for (Source source : capture.sources()) {
                json.row(() -> {
                    json.text("path", source.path().toString());
                    json.text("sha256", source.sha256());
                });
            }
        });
        json.number("sampleRateHz", capture.timeBase().sampleRateHz());
        json.count("samples", capture.sampleCount());
        Span span = Span.of(capture);
        json.number("startS", span.startSeconds());
        json.number("durationS", span.durationSeconds());
        json.array("gaps", () -> {
            for (Gap gap : capture.timeBase().gaps()) {
                json.row(() -> {
                    json.number("startS", gap.startSeconds());
                    json.number("endS", gap.endSeconds());
                });
            }
        });
        json.object("guessed", () -> {
            for (Map.Entry<String, String> guess : capture.guessed().entrySet()) {
                json.text(guess.getKey(), guess.getValue());
            }
        });
        json.array("fitness", () -> {
            for (Fitness item : fitness) {
                json.row(() -> {
                    json.text("item", item.item());
                    json.text("result", item.grade().word());
                    json.text("reason", item.reason());
                });
            }
        });
    }
}
