// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.dutywright.capture.ReadSettings;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.InstrumentErrors;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.report.RunSettings;

/** The {@code settings} block: everything said to the run, and every declared setting with the value used. */
public final class SettingsJson {
    private SettingsJson() {}

    /** Writes the members into the object that is open. */
    public static void write(JsonWriter json, RunSettings run, PulseSettings pulse) throws IOException {
        json.text("program", run.program());
        json.number("timeBasePpm", run.timeBasePpm());
        read(json, run.read());
        json.object("roles", () -> plans(json, run.plans(), plan -> plan.role().map(role -> role.word())));
        json.object(
                "activeLevels",
                () -> plans(json, run.plans(), plan -> plan.active().map(active -> active.word())));
        json.number("fromS", run.fromSeconds());
        json.number("toS", run.toSeconds());
        json.text("position", run.position());
        json.number("supplyV", run.supplyVolts());
        json.texts("catalogues", run.catalogues());
        json.text("voltageUncertaintyCovers", InstrumentErrors.of(pulse, "V").covers());
        json.object("measuring", () -> {
            for (PulseSettings.Setting setting : PulseSettings.DECLARED) {
                json.row(setting.id(), () -> {
                    json.number("value", pulse.get(setting));
                    json.text("unit", setting.unit());
                    json.truth("changed", pulse.get(setting) != setting.defaultValue());
                });
            }
        });
    }

    private static void read(JsonWriter json, ReadSettings read) throws IOException {
        json.number("sampleRateHz", read.sampleRateHz());
        json.array("columns", () -> {
            for (ReadSettings.Pick pick : read.channels()) {
                json.row(() -> {
                    json.text("column", pick.column());
                    json.text("name", pick.name());
                });
            }
        });
        json.object("scales", () -> {
            for (Map.Entry<String, Double> scale : new TreeMap<>(read.scales()).entrySet()) {
                json.number(scale.getKey(), scale.getValue().doubleValue());
            }
        });
    }

    private static void plans(
            JsonWriter json, Map<String, ChannelPlan> plans, Function<ChannelPlan, Optional<String>> part)
            throws IOException {
        for (Map.Entry<String, ChannelPlan> plan : plans.entrySet()) {
            Optional<String> word = part.apply(plan.getValue());
            if (word.isPresent()) {
                json.text(plan.getKey(), word.get());
            }
        }
    }
}
