// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EdgeInstants;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.LevelSummary;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Status;
import org.dutywright.pulse.Uncertain;
import org.dutywright.report.ResultOrder;
import org.dutywright.report.TextTable;

/** The lines on one channel: a heading, then what was measured, indented. */
public final class ChannelText {
    private static final int PLACES_SHOWN = 3;
    private static final String INDENT = "  ";

    private ChannelText() {}

    /** The lines, without line ends. */
    public static List<String> lines(ChannelMeasurement channel) {
        TextTable table = TextTable.create();
        if (channel.role() == Role.PWM) {
            cycles(table, channel);
            levels(table, channel);
            edges(table, channel.edgeInstants());
            events(table, channel);
            absences(table, channel);
        } else {
            channel.level().ifPresent(level -> level(table, channel, level));
        }
        List<String> lines = new ArrayList<>();
        lines.add(heading(channel));
        table.lines().forEach(line -> lines.add(INDENT + line));
        return lines;
    }

    private static String heading(ChannelMeasurement channel) {
        StringBuilder line = new StringBuilder(channel.channel().name())
                .append(": ")
                .append(channel.role().word());
        if (channel.role() != Role.PWM) {
            return line.toString();
        }
        line.append(", active ").append(channel.active().word());
        if (channel.status() != Status.OK) {
            return line.append(", ")
                    .append(channel.status().word())
                    .append(": ")
                    .append(channel.statusReason())
                    .toString();
        }
        line.append(", ").append(Show.count(channel.cycleCount(), "cycle"));
        if (channel.disturbedCount() > 0) {
            line.append(", ")
                    .append(channel.disturbedCount())
                    .append(" of them disturbed and left out of the statistics");
        }
        return line.toString();
    }

    private static void cycles(TextTable table, ChannelMeasurement channel) {
        boolean any =
                channel.results().values().stream().anyMatch(result -> result.outcome() instanceof Outcome.OfCycles);
        if (any) {
            table.row("", "mean", "min", "max", "sd", "");
        }
        ResultOrder.of(channel.results()).forEach(result -> result(table, result));
    }

    private static void result(TextTable table, Result result) {
        switch (result.outcome()) {
            case Outcome.OfCycles found -> {
                Statistic statistic = found.statistic();
                table.row(
                        result.label(),
                        Show.value(statistic.mean(), statistic.u(), result.unit()),
                        Show.value(statistic.min(), result.unit()),
                        Show.value(statistic.max(), result.unit()),
                        Show.spread(statistic.sd(), result.unit()),
                        Show.mostly(statistic.budget()));
            }
            case Outcome.Single found -> single(table, result.label(), found.value(), result.unit());
            case Outcome.Absent absent -> {
                // Said in one line for each reason, see absences().
            }
        }
    }

    private static void single(TextTable table, String label, Uncertain value, String unit) {
        String mostly = Show.mostly(value.budget());
        if (mostly.isEmpty()) {
            table.row(label, Show.value(value, unit));
        } else {
            table.row(label, Show.value(value, unit), "", "", "", mostly);
        }
    }

    // A channel that could not be measured says so once, in its heading, not again for each result.
    private static void absences(TextTable table, ChannelMeasurement channel) {
        if (channel.status() != Status.OK) {
            return;
        }
        Map<String, List<String>> labels = new LinkedHashMap<>();
        for (Result result : channel.results().values()) {
            if (result.outcome() instanceof Outcome.Absent absent) {
                labels.computeIfAbsent(absent.reason(), reason -> new ArrayList<>())
                        .add(result.label());
            }
        }
        String label = "Not measured";
        for (Map.Entry<String, List<String>> entry : labels.entrySet()) {
            table.row(label, String.join("; ", entry.getValue()) + ": " + entry.getKey());
            label = "";
        }
    }

    private static void levels(TextTable table, ChannelMeasurement channel) {
        String unit = channel.channel().unit();
        channel.levels().ifPresent(levels -> {
            single(table, "Low level", levels.low(), unit);
            single(table, "High level", levels.high(), unit);
        });
        if (channel.levels().isEmpty()) {
            channel.level().ifPresent(level -> level(table, channel, level));
        }
    }

    private static void edges(TextTable table, EdgeInstants edges) {
        List<String> parts = new ArrayList<>();
        if (edges.fitted() > 0) {
            parts.add(edges.fitted() + " fitted to the samples on the edge");
        }
        if (edges.interpolated() > 0) {
            parts.add(edges.interpolated() + " interpolated between two samples");
        }
        if (!parts.isEmpty()) {
            table.row("Edge instants", String.join(", ", parts));
        }
    }

    private static void level(TextTable table, ChannelMeasurement channel, LevelSummary level) {
        String unit = channel.channel().unit();
        single(table, "Mean", level.mean(), unit);
        table.row("Min, max", Show.value(level.min(), unit) + ", " + Show.value(level.max(), unit));
        table.row("RMS", Show.value(level.rms(), unit));
    }

    private static void events(TextTable table, ChannelMeasurement channel) {
        Map<EventKind, List<PulseEvent>> listed = channel.events().stream()
                .collect(Collectors.groupingBy(
                        PulseEvent::kind, () -> new EnumMap<>(EventKind.class), Collectors.toList()));
        String label = "Events";
        for (EventKind kind : EventKind.values()) {
            long count = channel.eventCounts().getOrDefault(kind, 0L);
            if (count > 0) {
                table.row(label, kind.word() + " " + count + places(listed.getOrDefault(kind, List.of()), count));
                label = "";
            }
        }
        if (channel.status() == Status.OK && label.equals("Events")) {
            table.row(label, "none");
        }
    }

    // The first place with what was found there, then where to look for more.
    private static String places(List<PulseEvent> events, long count) {
        if (events.isEmpty()) {
            return "";
        }
        String first =
                events.get(0).detail() + " at " + Show.instant(events.get(0).startSeconds());
        String more = events.stream()
                .limit(PLACES_SHOWN)
                .skip(1)
                .map(event -> Show.instant(event.startSeconds()))
                .collect(Collectors.joining(", "));
        return ": " + first + (more.isEmpty() ? "" : "; also at " + more) + (count > PLACES_SHOWN ? ", …" : "");
    }
}
