// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Gap;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.InstrumentErrors;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.SettingText;
import org.dutywright.report.TextTable;

/** The lines on the recording itself: files, samples, span, gaps, what it cannot carry, settings that were changed. */
public final class RecordingText {
    private static final int GAPS_SHOWN = 3;

    private RecordingText() {}

    /** Adds them as rows of two columns. */
    public static void addTo(TextTable table, CaptureMeasurement measurement) throws IOException {
        Capture capture = measurement.capture();
        List<Fitness> fitness = measurement.fitness();
        table.row(
                "recording",
                capture.sources().stream()
                        .map(source -> source.path().toString())
                        .collect(Collectors.joining(", ")));
        table.row("", samples(capture));
        List<Gap> gaps = capture.timeBase().gaps();
        if (!gaps.isEmpty()) {
            table.row("", gaps(gaps));
        }
        for (Fitness item : fitness) {
            if (item.grade() != Fitness.Grade.GOOD) {
                table.row(item.grade().word(), item.item() + ": " + item.reason());
            }
        }
        String label = "settings";
        for (PulseSettings.Setting setting : measurement.settings().changed()) {
            String value = SettingText.of(setting, measurement.settings().get(setting));
            String usual = SettingText.of(setting, setting.defaultValue());
            table.row(label, setting.id() + " " + value + ", by default " + usual);
            label = "";
        }
        table.row(
                "values",
                "± is the standard uncertainty (k = 1), of voltages for the "
                        + InstrumentErrors.of(measurement.settings(), "V").covers());
    }

    private static String samples(Capture capture) throws IOException {
        OptionalDouble rate = capture.timeBase().sampleRateHz();
        Span span = Span.of(capture);
        String count = Show.count(capture.sampleCount(), "sample");
        String spacing = rate.isPresent()
                ? " at " + Show.exact(rate.getAsDouble(), "Hz")
                : ", unevenly spaced, typically "
                        + Show.value(capture.timeBase().stepSeconds(), "s") + " apart";
        if (span.startSeconds().isEmpty()) {
            return count;
        }
        return count + spacing + ", from " + Show.instant(span.startSeconds().getAsDouble()) + ", "
                + Show.exact(span.durationSeconds().getAsDouble(), "s") + " long";
    }

    private static String gaps(List<Gap> gaps) {
        String places = gaps.stream()
                .limit(GAPS_SHOWN)
                .map(gap -> Show.instant(gap.startSeconds()) + " to " + Show.instant(gap.endSeconds()))
                .collect(Collectors.joining(", "));
        String more = gaps.size() > GAPS_SHOWN ? ", …" : "";
        return Show.count(gaps.size(), "gap") + " in the recording: " + places + more;
    }
}
