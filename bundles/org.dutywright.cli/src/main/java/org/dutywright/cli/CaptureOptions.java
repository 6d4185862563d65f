// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.dutywright.capture.ReadSettings;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.text.Nearest;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What is measured and how: the part of the command line that {@code measure} and {@code check} share. */
final class CaptureOptions {
    private static final double MOST_PPM = 1e5;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "the capture; several files are columns of one")
    private List<Path> files;

    @Option(
            names = "--channel",
            paramLabel = "COLUMN=NAME",
            description = "picks or renames a column: its heading, or #1 for the first value column")
    private List<String> channels = new ArrayList<>();

    @Option(
            names = "--role",
            paramLabel = "NAME=ROLE",
            description = "pwm, supply, ground, level, switch or ignore; else found")
    private List<String> roles = new ArrayList<>();

    @Option(names = "--active", paramLabel = "NAME=LEVEL", description = "the active level, high or low; else high")
    private List<String> actives = new ArrayList<>();

    @Option(
            names = "--sample-rate",
            paramLabel = "HZ",
            converter = Numbers.class,
            description = "samples a second of a file without time column")
    private Double sampleRateHz;

    @Option(names = "--scale", paramLabel = "NAME=FACTOR", description = "multiplies a channel, for a divider's ratio")
    private List<String> scales = new ArrayList<>();

    @Option(
            names = "--time-base-ppm",
            paramLabel = "PPM",
            converter = Numbers.class,
            description = "uncertainty of the recording's clock, else ${DEFAULT-VALUE}")
    private double timeBasePpm = CaptureMeasurer.DEFAULT_TIME_BASE_PPM;

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
            names = "--set",
            paramLabel = "ID=VALUE",
            description = "a setting of measuring; its ids stand under settings.measuring in the JSON")
    private List<String> settings = new ArrayList<>();

    List<Path> files() {
        return List.copyOf(files);
    }

    List<String> roles() {
        return roles;
    }

    List<String> actives() {
        return actives;
    }

    double timeBasePpm() {
        if (!(timeBasePpm >= 0 && timeBasePpm <= MOST_PPM)) {
            throw CommandFailure.usage("--time-base-ppm " + timeBasePpm + ": must lie between 0 and " + MOST_PPM);
        }
        return timeBasePpm;
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

    ReadSettings readSettings() {
        if (sampleRateHz != null && !(sampleRateHz > 0)) {
            throw CommandFailure.usage("--sample-rate " + sampleRateHz + ": must be above 0");
        }
        List<ReadSettings.Pick> picks = new ArrayList<>();
        for (String text : channels) {
            Assignment pick = Assignment.parse("--channel", "COLUMN=NAME", text);
            picks.add(new ReadSettings.Pick(pick.name(), pick.value()));
        }
        Map<String, Double> factors = new LinkedHashMap<>();
        Assignment.parseAll("--scale", "NAME=FACTOR", scales)
                .forEach((name, factor) -> factors.put(name, factor(name, factor)));
        return new ReadSettings(optional(sampleRateHz), picks, factors);
    }

    private static double factor(String name, String text) {
        double factor = Numbers.parse("--scale", new Assignment(name, text));
        if (factor == 0) {
            throw CommandFailure.usage("--scale " + name + "=" + text + ": a factor of 0 leaves nothing to measure");
        }
        return factor;
    }

    PulseSettings pulseSettings() {
        PulseSettings made = PulseSettings.defaults();
        for (Map.Entry<String, String> entry :
                Assignment.parseAll("--set", "ID=VALUE", settings).entrySet()) {
            made = with(made, entry.getKey(), entry.getValue());
        }
        made = with(made, "--gain-error", PulseSettings.GAIN_ERROR, gainErrorPercent);
        return with(made, "--offset-error", PulseSettings.OFFSET_ERROR, offsetErrorVolts);
    }

    private static PulseSettings with(
            PulseSettings settings, String option, PulseSettings.Setting setting, Double value) {
        try {
            return value == null ? settings : settings.with(setting, value);
        } catch (IllegalArgumentException e) {
            throw CommandFailure.usage(option + ": " + e.getMessage());
        }
    }

    private static PulseSettings with(PulseSettings settings, String id, String value) {
        List<String> ids =
                PulseSettings.DECLARED.stream().map(PulseSettings.Setting::id).toList();
        int index = ids.indexOf(id);
        if (index < 0) {
            throw CommandFailure.usage("--set " + id + ": no such setting; " + Nearest.hint(id, ids));
        }
        double number = Numbers.parse("--set", new Assignment(id, value));
        try {
            return settings.with(PulseSettings.DECLARED.get(index), number);
        } catch (IllegalArgumentException e) {
            throw CommandFailure.usage("--set " + e.getMessage());
        }
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
