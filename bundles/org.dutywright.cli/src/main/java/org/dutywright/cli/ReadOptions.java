// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.dutywright.capture.ReadSettings;
import org.dutywright.text.ProblemsException;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which recording is read and how: the part of the command line of every command that reads one. */
final class ReadOptions {
    @Parameters(arity = "1..*", paramLabel = "FILE", description = "the capture; several files are columns of one")
    private List<Path> files;

    @Option(
            names = "--channel",
            paramLabel = "COLUMN=NAME",
            description = "picks or renames a column: its heading, or #1 for the first value column")
    private List<String> channels = new ArrayList<>();

    @Option(
            names = "--sample-rate",
            paramLabel = "HZ",
            converter = Numbers.class,
            description = "samples a second of a file without time column")
    private Double sampleRateHz;

    @Option(names = "--scale", paramLabel = "NAME=FACTOR", description = "multiplies a channel, for a divider's ratio")
    private List<String> scales = new ArrayList<>();

    @Mixin
    private ImportOptions imports;

    List<Path> files() {
        return List.copyOf(files);
    }

    /** How to read them: the options on top of the text of settings. */
    Import imported() throws IOException, ProblemsException {
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
        OptionalDouble rate = sampleRateHz == null ? OptionalDouble.empty() : OptionalDouble.of(sampleRateHz);
        return imports.read(new ReadSettings(rate, picks, factors));
    }

    private static double factor(String name, String text) {
        double factor = Numbers.parse("--scale", new Assignment(name, text));
        if (factor == 0) {
            throw CommandFailure.usage("--scale " + name + "=" + text + ": a factor of 0 leaves nothing to measure");
        }
        return factor;
    }
}
