// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.dutywright.diagnosis.AgreementResult;
import org.dutywright.diagnosis.CheckResult;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.diagnosis.Suspect;
import org.dutywright.report.internal.RecordingText;
import org.dutywright.report.internal.Show;
import org.dutywright.sensor.Sensor;

/**
 * What was judged, for people: recording, channels, each line with its limits, what was not judged and why, the
 * agreement of the channels, the suspects with what speaks for and against them, and the verdict as the last line.
 */
public final class CheckText {
    private static final List<String> CAUTION = List.of(
            "Work on a vehicle can hurt: secure the machine against moving, keep clear of hot parts, and mind the",
            "current that a battery can give. The maker's procedure, local codes and licensed practice come first.");

    private CheckText() {}

    /** The lines, without line ends. */
    public static List<String> lines(CheckResult check) throws IOException {
        List<String> lines = new ArrayList<>(head(check));
        MeasureText.addChannels(lines, check.measurement());
        section(lines, "judged", judged(check));
        section(lines, "not judged", notJudged(check));
        section(lines, "agreement of the channels", List.of(agreement(check)));
        section(lines, "likely places of the fault", suspects(check));
        section(lines, "next measurement", next(check));
        lines.add("");
        lines.add("verdict: " + VerdictText.line(check));
        return lines;
    }

    private static void section(List<String> lines, String title, List<String> body) {
        if (!body.isEmpty()) {
            lines.add("");
            lines.add(title);
            body.forEach(line -> lines.add("  " + line));
        }
    }

    private static List<String> head(CheckResult check) throws IOException {
        Sensor sensor = check.sensor();
        TextTable table = TextTable.create();
        table.row("sensor", sensor.id() + ": " + sensor.title());
        table.row("", origin(sensor.origin()));
        table.row(
                "",
                "decision rule " + sensor.decision().rule().word() + ", coverage "
                        + Show.exact(sensor.decision().coverage(), ""));
        table.row("channels", matched(check));
        RecordingText.addTo(table, check.measurement());
        return table.lines();
    }

    private static String origin(Sensor.Origin origin) {
        if (origin.document().isEmpty()) {
            return "the sensor text does not say where its limits come from";
        }
        String revision = origin.revision().isEmpty() ? "" : ", revision " + origin.revision();
        String date = origin.date().isEmpty() ? "" : ", " + origin.date();
        return "limits from " + origin.document() + revision + date;
    }

    private static String matched(CheckResult check) {
        if (check.match().captureNames().isEmpty()) {
            return "none of the recording stands for one of the sensor";
        }
        String pairs = check.match().captureNames().entrySet().stream()
                .map(pair -> pair.getKey().equals(pair.getValue())
                        ? pair.getKey()
                        : pair.getKey() + " is " + pair.getValue() + " of the recording")
                .collect(Collectors.joining(", "));
        return pairs + " (matched by " + (check.match().byName() ? "name" : "order") + ")";
    }

    private static List<String> judged(CheckResult check) {
        TextTable table = TextTable.create();
        for (Line line : check.lines()) {
            if (line.result() != LineResult.NOT_JUDGED) {
                table.row(
                        line.item(),
                        Show.measured(line.measured(), line.u(), line.unit()).orElse(""),
                        Show.limits(line.lower(), line.upper(), line.unit()),
                        line.result().word(),
                        remark(line));
            }
        }
        return table.lines();
    }

    private static String remark(Line line) {
        String mostly = Show.mostly(line.budget());
        return line.reason().isEmpty() || mostly.isEmpty() ? line.reason() + mostly : line.reason() + "; " + mostly;
    }

    private static List<String> notJudged(CheckResult check) {
        TextTable table = TextTable.create();
        for (Line line : check.lines()) {
            if (line.result() == LineResult.NOT_JUDGED) {
                table.row(line.item(), line.reason());
            }
        }
        List<String> lines = new ArrayList<>(table.lines());
        if (!check.absentLimits().isEmpty()) {
            lines.add("the sensor text leaves open: " + String.join(", ", check.absentLimits()));
        }
        return lines;
    }

    private static String agreement(CheckResult check) {
        if (check.agreement().isEmpty()) {
            return "not judged: " + check.agreementAbsent();
        }
        AgreementResult agreement = check.agreement().get();
        String would = agreement.wouldFlag() ? "a module would log a fault" : "a module would log no fault";
        return VerdictText.agreement(agreement) + ": " + would;
    }

    private static List<String> suspects(CheckResult check) {
        List<String> lines = new ArrayList<>();
        for (Suspect suspect : check.suspects()) {
            if (suspect.place() != Suspect.Place.NONE) {
                lines.add(suspect(suspect));
                suspect.reasonsFor().forEach(reason -> lines.add("       for      " + reason));
                suspect.reasonsAgainst().forEach(reason -> lines.add("       against  " + reason));
            }
        }
        return lines;
    }

    private static String suspect(Suspect suspect) {
        String kind = suspect.kind().map(it -> ", " + it.word()).orElse("");
        String channels = suspect.channels().isEmpty() ? "" : " (" + String.join(", ", suspect.channels()) + ")";
        return String.format(Locale.ROOT, "%3.0f %%  ", 100 * suspect.weight())
                + suspect.place().word()
                + kind
                + channels;
    }

    private static List<String> next(CheckResult check) {
        List<String> lines = new ArrayList<>();
        if (check.suspects().stream().anyMatch(suspect -> suspect.place() != Suspect.Place.NONE)) {
            lines.add(check.nextMeasurement());
            lines.addAll(CAUTION);
        }
        return lines;
    }
}
