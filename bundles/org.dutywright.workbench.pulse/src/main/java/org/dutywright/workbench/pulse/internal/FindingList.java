// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.dutywright.diagnosis.AgreementResult;
import org.dutywright.diagnosis.CheckResult;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.report.VerdictText;
import org.dutywright.sensor.Sensor.SensorChannel;
import org.dutywright.workbench.pulse.internal.Finding.Place;
import org.dutywright.workbench.pulse.internal.Finding.Span;

/** What of a check is worth a marker: each line that fails or is inconclusive, at its place. */
final class FindingList {
    /** More places of one kind would bury the others; the table of cycles and the report tell of all. */
    static final int PLACES = 20;

    private static final String EVENTS = "events.";

    private final CheckResult check;
    private final List<Finding> findings = new ArrayList<>();

    private FindingList(CheckResult check) {
        this.check = check;
    }

    /** The findings, in the order of the lines. Reads the cycles, so the measurement must be open. */
    static List<Finding> of(CheckResult check) throws IOException {
        FindingList list = new FindingList(check);
        for (Line line : check.lines()) {
            if (line.result() == LineResult.FAIL || line.result() == LineResult.INCONCLUSIVE) {
                list.add(line);
            }
        }
        check.agreement().filter(AgreementResult::wouldFlag).ifPresent(list::add);
        return List.copyOf(list.findings);
    }

    private void add(Line line) throws IOException {
        Optional<SensorChannel> sensor = sensorChannel(line.item());
        Optional<ChannelMeasurement> channel = sensor.flatMap(it -> measured(it.name()));
        String name = channel.map(it -> it.channel().name()).orElse("");
        String rest =
                sensor.map(it -> line.item().substring(it.name().length() + 1)).orElse(line.item());
        String about = sensor.map(it -> it.name() + " ").orElse("");
        boolean failed = line.result() == LineResult.FAIL;
        if (rest.startsWith(EVENTS) && channel.isPresent()) {
            String kind = rest.substring(EVENTS.length());
            List<PulseEvent> events = events(channel.get(), kind);
            for (PulseEvent event : events) {
                Span span = new Span(event.startSeconds(), event.endSeconds());
                findings.add(new Finding(
                        failed, line.item(), about + kind + ": " + event.detail(), new Place(name, Optional.of(span))));
            }
            if (!events.isEmpty()) {
                return;
            }
        }
        Optional<Span> span = rest.equals("duty") && channel.isPresent()
                ? furthestDuty(channel.get().cycles(), line)
                : Optional.empty();
        String why = line.reason().isEmpty() ? line.result().word() : line.reason();
        findings.add(new Finding(failed, line.item(), about + rest + ": " + why, new Place(name, span)));
    }

    private void add(AgreementResult agreement) {
        double start = agreement.longestStartSeconds().orElse(agreement.maxDifferenceAtSeconds());
        Span span = new Span(start, start + agreement.longestBeyondLimitSeconds());
        String channels = String.join(", ", agreement.channels());
        findings.add(new Finding(
                true,
                "agreement",
                "agreement: " + channels + ": " + VerdictText.agreement(agreement),
                new Place("", Optional.of(span))));
    }

    // Names may begin with one another, and may have dots.
    private Optional<SensorChannel> sensorChannel(String item) {
        return check.sensor().channels().stream()
                .filter(channel -> item.startsWith(channel.name() + "."))
                .max(Comparator.comparingInt(channel -> channel.name().length()));
    }

    private Optional<ChannelMeasurement> measured(String sensorName) {
        String name = check.match().captureNames().get(sensorName);
        return check.measurement().channels().stream()
                .filter(channel -> channel.channel().name().equals(name))
                .findFirst();
    }

    private static List<PulseEvent> events(ChannelMeasurement channel, String kind) {
        return channel.events().stream()
                .filter(event -> event.kind().word().equals(kind))
                .limit(PLACES)
                .toList();
    }

    private static Optional<Span> furthestDuty(CycleTable cycles, Line line) throws IOException {
        double furthest = 0;
        Optional<Cycle> found = Optional.empty();
        CycleTable.Cursor cursor = cycles.cursor();
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            double duty = cycle.dutyPercent();
            double beyond = Math.max(
                    duty - line.upper().orElse(Double.POSITIVE_INFINITY),
                    line.lower().orElse(Double.NEGATIVE_INFINITY) - duty);
            if (!cycle.disturbed() && beyond > furthest) {
                furthest = beyond;
                found = Optional.of(cycle);
            }
        }
        return found.map(cycle -> new Span(cycle.startSeconds(), cycle.endSeconds()));
    }
}
