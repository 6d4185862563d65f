// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.dutywright.capture.ImportSettings;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.TableSettings;
import org.dutywright.capture.TimeSettings;
import org.dutywright.report.ImportText;
import org.dutywright.units.ScaledUnit;

/** Writes import settings as text, one key a line, in the order of the description. */
public final class ImportWriter {
    private final StringBuilder text = new StringBuilder();

    private ImportWriter() {}

    /** Writes them. */
    public static String write(ImportSettings settings) {
        ImportWriter writer = new ImportWriter();
        writer.all(settings);
        return writer.text.toString();
    }

    private void all(ImportSettings settings) {
        ReadSettings read = settings.read();
        line("schema: " + ImportText.SCHEMA);
        line("name: " + quoted(settings.name()));
        read.format().ifPresent(format -> line("format: " + quoted(format)));
        read.sampleRateHz().ifPresent(rate -> line("sampleRate: " + number(rate) + " Hz"));
        table(read.table());
        time(read.time());
        read.fullScaleVolts().ifPresent(volts -> line("fullScale: " + number(volts) + " V"));
        if (!read.channels().isEmpty()) {
            line("channels:");
            read.channels().forEach(pick -> channel(settings, pick));
        }
    }

    private void table(TableSettings table) {
        if (table.isNone()) {
            return;
        }
        line("table:");
        table.encoding().ifPresent(encoding -> line("  encoding: " + encoding.name()));
        table.delimiter().ifPresent(delimiter -> line("  delimiter: " + delimiter.word()));
        table.decimalComma().ifPresent(comma -> line("  decimalMark: " + (comma ? "comma" : "point")));
        numbered("headerLine", table.headerLine());
        numbered("unitsLine", table.unitsLine());
        numbered("firstLine", table.firstLine());
    }

    private void numbered(String key, OptionalLong line) {
        line.ifPresent(number -> line("  " + key + ": " + (number == 0 ? TimeSettings.NONE : Long.toString(number))));
    }

    private void time(TimeSettings time) {
        List<String> parts = new ArrayList<>();
        time.column().ifPresent(column -> parts.add("column: " + quoted(column)));
        time.unit().flatMap(ScaledUnit::symbol).ifPresent(unit -> parts.add("unit: " + quoted(unit)));
        if (!parts.isEmpty()) {
            line("time: {" + String.join(", ", parts) + "}");
        }
    }

    private void channel(ImportSettings settings, ReadSettings.Pick pick) {
        String name = pick.name();
        List<String> parts = new ArrayList<>();
        parts.add("column: " + quoted(pick.column()));
        parts.add("name: " + quoted(name));
        Optional.ofNullable(settings.read().units().get(name))
                .flatMap(ScaledUnit::symbol)
                .ifPresent(unit -> parts.add("unit: " + quoted(unit)));
        Optional.ofNullable(settings.read().scales().get(name))
                .ifPresent(scale -> parts.add("scale: " + number(scale)));
        Optional.ofNullable(settings.roles().get(name)).ifPresent(role -> parts.add("role: " + role));
        line("  - {" + String.join(", ", parts) + "}");
    }

    private void line(String line) {
        text.append(line).append('\n');
    }

    private static String number(double value) {
        BigDecimal decimal = new BigDecimal(Double.toString(value)).stripTrailingZeros();
        int size = Math.max(decimal.precision(), Math.abs(decimal.scale()));
        return size > 20 ? decimal.toString() : decimal.toPlainString();
    }

    // whatever a heading holds, it is one value; YAML's double quotes are those of JSON
    private static String quoted(String value) {
        if (value.matches("[A-Za-z][A-Za-z0-9_-]*")) {
            return value;
        }
        StringBuilder quoted = new StringBuilder("\"");
        value.codePoints().forEach(c -> {
            if (c == '"' || c == '\\') {
                quoted.append('\\').appendCodePoint(c);
            } else if (Character.isISOControl(c) || c == 0xFEFF || (c >= 0xD800 && c < 0xE000)) {
                quoted.append(String.format("\\u%04x", c));
            } else {
                quoted.appendCodePoint(c);
            }
        });
        return quoted.append('"').toString();
    }
}
