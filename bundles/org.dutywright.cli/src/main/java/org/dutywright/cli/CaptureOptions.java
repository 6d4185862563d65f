// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.RecorderSettings;
import org.dutywright.pulse.SettingText;
import org.dutywright.text.Nearest;
import org.dutywright.text.ProblemsException;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What is measured and how: the part of the command line that {@code measure} and {@code check} share. */
final class CaptureOptions {
    private static final String SETTING = "--setting";
    private static final String TIME_BASE = "--time-base-ppm";

    @Mixin
    private ReadOptions read;

    @Option(
            names = "--role",
            paramLabel = "NAME=ROLE",
            description = "pwm, supply, ground, level, switch or ignore; else found")
    private List<String> roles = new ArrayList<>();

    @Option(names = "--active", paramLabel = "NAME=LEVEL", description = "the active level, high or low; else high")
    private List<String> actives = new ArrayList<>();

    @Option(
            names = TIME_BASE,
            paramLabel = "PPM",
            converter = Numbers.class,
            description = "uncertainty of the recording's clock, else 50; short for the setting instrument.time-base")
    private Double timeBasePpm;

    @Option(
            names = "--gain-error",
            paramLabel = "PERCENT",
            converter = Numbers.class,
            description =
                    "the recorder's gain is off by no more than this, in percent of the reading; as its data sheet says")
    private Double gainErrorPercent;

    @Option(
            names = "--offset-error",
            paramLabel = "VOLTS",
            converter = Numbers.class,
            description = "the recorder's zero is off by no more than this")
    private Double offsetErrorVolts;

    @Option(
            names = "--from",
            paramLabel = "S",
            converter = Numbers.class,
            description = "measures from here on, in the file's time")
    private Double fromSeconds;

    @Option(
            names = "--to",
            paramLabel = "S",
            converter = Numbers.class,
            description = "measures up to here, in the file's time")
    private Double toSeconds;

    @Option(
            names = SETTING,
            paramLabel = "ID=VALUE",
            description = "changes a setting of measuring, with or without its unit: 'runt.share=15 %%';"
                    + " 'dutywright settings' lists them all")
    private List<String> settings = new ArrayList<>();

    List<Path> files() {
        return read.files();
    }

    List<String> roles() {
        return roles;
    }

    List<String> actives() {
        return actives;
    }

    OptionalDouble fromSeconds() {
        return optional(fromSeconds);
    }

    OptionalDouble toSeconds() {
        OptionalDouble to = optional(toSeconds);
        if (to.isPresent() && fromSeconds != null && to.getAsDouble() <= fromSeconds) {
            throw CommandFailure.usage("--to " + to.getAsDouble() + " must lie after --from " + fromSeconds);
        }
        return to;
    }

    Import imported() throws IOException, ProblemsException {
        return read.imported();
    }

    PulseSettings pulseSettings() {
        PulseSettings made = PulseSettings.defaults();
        Map<String, String> given = Assignment.parseAll(SETTING, "ID=VALUE", settings);
        for (Map.Entry<String, String> entry : given.entrySet()) {
            made = with(made, entry.getKey(), entry.getValue());
        }
        made = with(made, given, TIME_BASE, RecorderSettings.TIME_BASE, timeBasePpm);
        made = with(made, given, "--gain-error", RecorderSettings.GAIN_ERROR, gainErrorPercent);
        return with(made, given, "--offset-error", RecorderSettings.OFFSET_ERROR, offsetErrorVolts);
    }

    private static PulseSettings with(
            PulseSettings settings,
            Map<String, String> given,
            String option,
            PulseSettings.Setting setting,
            Double value) {
        if (value != null && given.containsKey(setting.id())) {
            throw CommandFailure.usage(
                    SETTING + " " + setting.id() + " and " + option + " say the same; give one of them");
        }
        try {
            return value == null ? settings : settings.with(setting, value);
        } catch (IllegalArgumentException e) {
            throw CommandFailure.usage(option + ": " + e.getMessage());
        }
    }

    private static PulseSettings with(PulseSettings settings, String id, String value) {
        List<String> ids =
                PulseSettings.DECLARED.stream().map(PulseSettings.Setting::id).toList();
        PulseSettings.Setting setting = PulseSettings.find(id)
                .orElseThrow(() -> CommandFailure.usage(SETTING + " " + id + ": no such setting; "
                        + Nearest.of(id, ids)
                                .map(near -> "did you mean '" + near + "'?")
                                .orElse("'dutywright settings' lists them all")));
        try {
            return settings.with(setting, SettingText.parse(setting, value));
        } catch (IllegalArgumentException e) {
            throw CommandFailure.usage(SETTING + " " + e.getMessage());
        }
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
