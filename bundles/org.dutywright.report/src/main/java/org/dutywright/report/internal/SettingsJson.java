// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.io.IOException;
import java.nio.charset.Charset;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Function;
import org.dutywright.capture.Delimiter;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.TableSettings;
import org.dutywright.capture.TimeSettings;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.InstrumentErrors;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.report.RunSettings;
import org.dutywright.units.ScaledUnit;

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
        json.object("import", () -> imported(json, read));
    }

    private static void imported(JsonWriter json, ReadSettings read) throws IOException {
        json.text("format", read.format());
        TableSettings table = read.table();
        json.text("encoding", table.encoding().map(Charset::name));
        json.text("delimiter", table.delimiter().map(Delimiter::word));
        json.text("decimalMark", table.decimalComma().map(comma -> comma ? "comma" : "point"));
        json.text("headerLine", line(table.headerLine()));
        json.text("unitsLine", line(table.unitsLine()));
        json.text("firstLine", line(table.firstLine()));
        json.text("timeColumn", read.time().column());
        json.text("timeUnit", read.time().unit().flatMap(ScaledUnit::symbol));
        json.number("fullScaleV", read.fullScaleVolts());
        json.object("units", () -> {
            for (Map.Entry<String, ScaledUnit> unit : new TreeMap<>(read.units()).entrySet()) {
                json.text(unit.getKey(), unit.getValue().symbol());
            }
        });
    }

    private static Optional<String> line(OptionalLong line) {
        return line.isEmpty()
                ? Optional.empty()
                : Optional.of(line.getAsLong() == 0 ? TimeSettings.NONE : Long.toString(line.getAsLong()));
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
