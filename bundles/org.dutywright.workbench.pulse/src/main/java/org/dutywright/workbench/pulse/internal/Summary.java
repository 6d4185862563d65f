// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.LevelSummary;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Status;
import org.dutywright.pulse.Uncertain;
import org.dutywright.report.ResultOrder;
import org.dutywright.units.UnitPrinter;

/** What was measured on a capture, a row for each quantity and a value for each channel. */
final class Summary {
    private static final int DIGITS = 5;
    private static final int SPREAD_DIGITS = 3;

    private final List<ChannelMeasurement> channels;
    private final List<SummaryRow> rows = new ArrayList<>();

    private Summary(List<ChannelMeasurement> channels) {
        this.channels = channels;
    }

    /** The rows; a quantity that no channel has is left out. */
    static List<SummaryRow> of(CaptureMeasurement measurement) {
        Summary summary = new Summary(measurement.channels());
        summary.states();
        summary.results();
        summary.levels();
        summary.events();
        return List.copyOf(summary.rows);
    }

    private void states() {
        row("Status", Summary::status);
        row("Active level", channel -> isPwm(channel) ? channel.active().word() : "");
        row("Cycles", channel -> isMeasured(channel) ? String.format("%,d", channel.cycleCount()) : "");
        row("Disturbed cycles", channel -> isMeasured(channel) ? String.format("%,d", channel.disturbedCount()) : "");
    }

    private static String status(ChannelMeasurement channel) {
        if (!isPwm(channel)) {
            return channel.role().word();
        }
        String reason = channel.statusReason();
        return channel.status().word() + (reason.isEmpty() ? "" : ": " + reason);
    }

    private void results() {
        Map<String, Result> all = new LinkedHashMap<>();
        channels.forEach(channel -> channel.results().forEach(all::putIfAbsent));
        for (Result result : ResultOrder.of(all)) {
            row(result.label(), channel -> value(channel, result.id()));
            row(result.label() + ", min", channel -> spread(channel, result.id(), Statistic::min, DIGITS));
            row(result.label() + ", max", channel -> spread(channel, result.id(), Statistic::max, DIGITS));
            row(result.label() + ", sd", channel -> spread(channel, result.id(), Statistic::sd, SPREAD_DIGITS));
        }
    }

    // Why a channel as a whole has no numbers stands in its status, once.
    private static String value(ChannelMeasurement channel, String id) {
        Result result = channel.results().get(id);
        if (result == null || !isMeasured(channel)) {
            return "";
        }
        return switch (result.outcome()) {
            case Outcome.OfCycles found ->
                UnitPrinter.print(found.statistic().mean(), found.statistic().u(), result.unit());
            case Outcome.Single found -> print(found.value(), result.unit());
            case Outcome.Absent absent -> "not measured: " + absent.reason();
        };
    }

    private static String spread(ChannelMeasurement channel, String id, Function<Statistic, Double> part, int digits) {
        Result result = channel.results().get(id);
        return result != null && result.outcome() instanceof Outcome.OfCycles found
                ? UnitPrinter.print(part.apply(found.statistic()), result.unit(), digits)
                : "";
    }

    private void levels() {
        row(
                "Low level",
                channel -> channel.levels()
                        .map(levels -> print(levels.low(), channel.channel().unit()))
                        .orElse(""));
        row(
                "High level",
                channel -> channel.levels()
                        .map(levels -> print(levels.high(), channel.channel().unit()))
                        .orElse(""));
        row("Mean of all samples", channel -> level(channel, level -> print(level.mean(), unit(channel))));
        row(
                "Smallest sample",
                channel -> level(channel, level -> UnitPrinter.print(level.min(), unit(channel), DIGITS)));
        row(
                "Largest sample",
                channel -> level(channel, level -> UnitPrinter.print(level.max(), unit(channel), DIGITS)));
        row("RMS", channel -> level(channel, level -> UnitPrinter.print(level.rms(), unit(channel), DIGITS)));
    }

    private static String level(ChannelMeasurement channel, Function<LevelSummary, String> part) {
        return isMeasured(channel) ? "" : channel.level().map(part).orElse("");
    }

    private void events() {
        Set<EventKind> kinds = new LinkedHashSet<>(List.of(EventKind.values()));
        boolean pulses = channels.stream().anyMatch(Summary::isMeasured);
        long count = channels.stream()
                .flatMap(channel -> channel.eventCounts().values().stream())
                .mapToLong(Long::longValue)
                .sum();
        if (pulses && count == 0) {
            row("Events", channel -> isMeasured(channel) ? "none" : "");
        }
        for (EventKind kind : kinds) {
            if (channels.stream().anyMatch(channel -> channel.eventCounts().containsKey(kind))) {
                row(
                        "Events: " + kind.word(),
                        channel -> isPwm(channel)
                                ? String.format("%,d", channel.eventCounts().getOrDefault(kind, 0L))
                                : "");
            }
        }
    }

    private void row(String label, Function<ChannelMeasurement, String> value) {
        List<String> values = channels.stream().map(value).toList();
        if (values.stream().anyMatch(text -> !text.isEmpty())) {
            rows.add(new SummaryRow(label, values));
        }
    }

    private static boolean isPwm(ChannelMeasurement channel) {
        return channel.role() == Role.PWM;
    }

    private static boolean isMeasured(ChannelMeasurement channel) {
        return isPwm(channel) && channel.status() == Status.OK;
    }

    private static String unit(ChannelMeasurement channel) {
        return channel.channel().unit();
    }

    private static String print(Uncertain value, String unit) {
        return UnitPrinter.print(value.value(), value.u(), unit);
    }
}
