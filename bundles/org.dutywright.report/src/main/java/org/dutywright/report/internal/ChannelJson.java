// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.LevelSummary;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Uncertain;

/**
 * One element of {@code channels}. Every channel has every field; what a channel cannot have is {@code null}: cycles
 * and an active level belong to PWM channels only.
 */
public final class ChannelJson {
    private ChannelJson() {}

    /** Writes the element. */
    public static void write(JsonWriter json, ChannelMeasurement channel) throws IOException {
        json.object(() -> {
            head(json, channel);
            json.uncertain("lowLevel", channel.levels().map(StateLevels::low));
            json.uncertain("highLevel", channel.levels().map(StateLevels::high));
            level(json, channel.level());
            cycles(json, channel);
            events(json, channel);
            others(json, channel);
            absences(json, channel);
        });
    }

    private static void head(JsonWriter json, ChannelMeasurement channel) throws IOException {
        json.text("name", channel.channel().name());
        json.text("role", channel.role().word());
        json.text("unit", channel.channel().unit());
        json.text("activeLevel", isPwm(channel) ? Optional.of(channel.active().word()) : Optional.empty());
        json.text("status", channel.status().word());
        json.text("statusReason", Optional.of(channel.statusReason()).filter(reason -> !reason.isEmpty()));
    }

    private static boolean isPwm(ChannelMeasurement channel) {
        return channel.role() == Role.PWM;
    }

    private static void level(JsonWriter json, Optional<LevelSummary> level) throws IOException {
        json.object("level", () -> {
            json.uncertain("mean", level.map(LevelSummary::mean));
            json.number("min", level.map(LevelSummary::min));
            json.number("max", level.map(LevelSummary::max));
            json.number("rms", level.map(LevelSummary::rms));
        });
    }

    private static void cycles(JsonWriter json, ChannelMeasurement channel) throws IOException {
        if (isPwm(channel)) {
            json.count("cycles", channel.cycleCount());
            json.count("cyclesDisturbed", channel.disturbedCount());
        } else {
            json.absent("cycles");
            json.absent("cyclesDisturbed");
        }
        json.statistic("frequencyHz", Found.statistic(channel, Found.FREQUENCY));
        json.statistic("periodS", Found.statistic(channel, Found.PERIOD));
        json.statistic("dutyPercent", Found.statistic(channel, Found.DUTY));
        json.statistic("pulseDurationS", Found.statistic(channel, Found.PULSE_DURATION));
        shape(json, channel);
        json.object("transitionS", () -> {
            median(json, "rise", Found.single(channel, Found.RISE));
            median(json, "fall", Found.single(channel, Found.FALL));
        });
        if (isPwm(channel)) {
            json.row("edgeInstants", () -> {
                json.count("fitted", channel.edgeInstants().fitted());
                json.count("interpolated", channel.edgeInstants().interpolated());
            });
        } else {
            json.absent("edgeInstants");
        }
        json.uncertain("meanVoltage", Found.single(channel, Found.MEAN_VOLTAGE));
        json.uncertain("rmsVoltage", Found.single(channel, Found.RMS_VOLTAGE));
        json.row("periodJitterS", () -> {
            Optional<Uncertain> rms = Found.single(channel, Found.JITTER_RMS);
            Optional<Uncertain> peakToPeak = Found.single(channel, Found.JITTER_PEAK_TO_PEAK);
            json.number("rms", rms.map(Uncertain::value));
            json.number("peakToPeak", peakToPeak.map(Uncertain::value));
            json.number("rmsU", rms.map(Uncertain::u));
            json.number("rmsU95", rms.map(Uncertain::u95));
            json.number("peakToPeakU", peakToPeak.map(Uncertain::u));
            json.number("peakToPeakU95", peakToPeak.map(Uncertain::u95));
            json.budget("rmsBudget", rms.map(Uncertain::budget));
            json.budget("peakToPeakBudget", peakToPeak.map(Uncertain::budget));
        });
    }

    private static void shape(JsonWriter json, ChannelMeasurement channel) throws IOException {
        json.statistic("pulseSeparationS", Found.statistic(channel, Found.PULSE_SEPARATION));
        json.statistic("dutyAtInputPercent", Found.statistic(channel, Found.INPUT_DUTY));
        json.statistic("pulseDurationAtInputS", Found.statistic(channel, Found.INPUT_PULSE_DURATION));
        json.object("overshootPercent", () -> {
            json.statistic("rise", Found.statistic(channel, Found.OVERSHOOT_RISE));
            json.statistic("fall", Found.statistic(channel, Found.OVERSHOOT_FALL));
        });
        json.object("undershootPercent", () -> {
            json.statistic("rise", Found.statistic(channel, Found.UNDERSHOOT_RISE));
            json.statistic("fall", Found.statistic(channel, Found.UNDERSHOOT_FALL));
        });
    }

    private static void median(JsonWriter json, String name, Optional<Uncertain> value) throws IOException {
        json.row(name, () -> {
            json.number("median", value.map(Uncertain::value));
            json.number("u", value.map(Uncertain::u));
            json.number("u95", value.map(Uncertain::u95));
            json.budget(value.map(Uncertain::budget));
        });
    }

    private static void events(JsonWriter json, ChannelMeasurement channel) throws IOException {
        json.row("eventCounts", () -> {
            for (EventKind kind : EventKind.values()) {
                Long count = channel.eventCounts().get(kind);
                if (count != null) {
                    json.count(kind.word(), count);
                }
            }
        });
        json.count("eventsListed", channel.events().size());
        json.array("events", () -> {
            for (PulseEvent event : channel.events()) {
                json.row(() -> event(json, event));
            }
        });
    }

    private static void event(JsonWriter json, PulseEvent event) throws IOException {
        json.text("kind", event.kind().word());
        json.number("startS", event.startSeconds());
        json.number("endS", event.endSeconds());
        if (event.cycle().isPresent()) {
            json.count("cycle", event.cycle().getAsLong());
        } else {
            json.absent("cycle");
        }
        json.text("detail", event.detail());
    }

    private static void others(JsonWriter json, ChannelMeasurement channel) throws IOException {
        List<Result> others = isPwm(channel) ? Found.others(channel.results()) : List.of();
        json.object("measurements", () -> {
            for (Result result : others) {
                json.row(result.id(), () -> {
                    json.text("label", result.label());
                    json.text("unit", result.unit());
                    outcome(json, result.outcome());
                });
            }
        });
    }

    private static void outcome(JsonWriter json, Outcome outcome) throws IOException {
        switch (outcome) {
            case Outcome.OfCycles found -> json.statisticMembers(Optional.of(found.statistic()));
            case Outcome.Single found -> json.uncertainMembers(Optional.of(found.value()));
            case Outcome.Absent absent -> json.text("reason", absent.reason());
        }
    }

    /** Says why a number is {@code null}, by the id of its measurement; of other channels than PWM the role says it. */
    private static void absences(JsonWriter json, ChannelMeasurement channel) throws IOException {
        Map<String, Result> results = isPwm(channel) ? channel.results() : Map.of();
        json.object("absent", () -> {
            for (Map.Entry<String, Result> entry : results.entrySet()) {
                if (entry.getValue().outcome() instanceof Outcome.Absent absent) {
                    json.text(entry.getKey(), absent.reason());
                }
            }
        });
    }
}
