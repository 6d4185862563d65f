// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.dutywright.capture.ImportSettings;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.TableSettings;
import org.dutywright.capture.TimeSettings;
import org.dutywright.pulse.Role;
import org.dutywright.report.ImportText;
import org.dutywright.text.BadValueException;
import org.dutywright.text.ProblemsException;
import org.dutywright.text.ScalarParser;
import org.dutywright.text.TextTree;
import org.dutywright.units.ScaledUnit;
import picocli.CommandLine.Option;

/** What a reader else finds out by looking at a file: each part of it as an option, and all of it as a text. */
final class ImportOptions {
    @Option(
            names = "--import-settings",
            paramLabel = "FILE",
            description = "a text of settings for reading; what other options say wins")
    private Path text;

    @Option(
            names = "--save-import-settings",
            paramLabel = "FILE",
            description = "writes how the capture was read, guesses included, as such a text")
    private Path saveTo;

    @Option(names = "--format", paramLabel = "ID", description = "the reader to use; 'dutywright plugins' lists them")
    private String format;

    @Option(names = "--encoding", paramLabel = "NAME", description = "of a text table, as UTF-8 or ISO-8859-1")
    private String encoding;

    @Option(
            names = "--delimiter",
            paramLabel = "WORD",
            description = "between cells: tab, semicolon, comma, 'vertical bar' or spaces")
    private String delimiter;

    @Option(names = "--decimal-mark", paramLabel = "point|comma", description = "of the numbers in a text table")
    private String decimalMark;

    @Option(names = "--header-line", paramLabel = "N", description = "the line of headings, or none")
    private String headerLine;

    @Option(names = "--units-line", paramLabel = "N", description = "the line of units, or none")
    private String unitsLine;

    @Option(names = "--first-line", paramLabel = "N", description = "the first line of values")
    private String firstLine;

    @Option(
            names = "--time-column",
            paramLabel = "COLUMN",
            description = "the column of time stamps: its heading, #1 for the first of the file, or none")
    private String timeColumn;

    @Option(names = "--time-unit", paramLabel = "UNIT", description = "unit of the time stamps, as ms")
    private String timeUnit;

    @Option(names = "--unit", paramLabel = "NAME=UNIT", description = "what a 1 of a channel is in the file, as mV")
    private List<String> units = new ArrayList<>();

    @Option(
            names = "--full-scale",
            paramLabel = "VOLTS",
            converter = Numbers.class,
            description = "volts of full scale of a sound file")
    private Double fullScaleVolts;

    /** The text and the options together. */
    Import read(ReadSettings channels) throws IOException, ProblemsException {
        if (fullScaleVolts != null && !(fullScaleVolts > 0)) {
            throw CommandFailure.usage("--full-scale " + fullScaleVolts + ": must be above 0");
        }
        Map<String, ScaledUnit> given = new LinkedHashMap<>();
        for (Map.Entry<String, String> unit :
                Assignment.parseAll("--unit", "NAME=UNIT", units).entrySet()) {
            given.put(
                    unit.getKey(),
                    word("--unit", unit.getValue(), ImportText::unit).orElseThrow());
        }
        ReadSettings said = new ReadSettings(
                Optional.ofNullable(format),
                channels.sampleRateHz(),
                channels.channels(),
                channels.scales(),
                given,
                fullScaleVolts == null ? OptionalDouble.empty() : OptionalDouble.of(fullScaleVolts),
                new TimeSettings(Optional.ofNullable(timeColumn), word("--time-unit", timeUnit, ImportText::timeUnit)),
                table());
        ImportSettings base = ImportSettings.none();
        if (text != null) {
            Inputs.check(List.of(text));
            List<String> roles = Arrays.stream(Role.values()).map(Role::word).toList();
            base = ImportText.parse(text.toString(), TextTree.read(text), roles);
        }
        return new Import(base.with(said), Optional.ofNullable(text), Optional.ofNullable(saveTo));
    }

    private TableSettings table() {
        ScalarParser<String> marks = ScalarParser.word(List.of("point", "comma"));
        return new TableSettings(
                word("--encoding", encoding, ImportText::encoding),
                word("--delimiter", delimiter, ImportText::delimiter),
                word("--decimal-mark", decimalMark, marks).map(mark -> mark.equals("comma")),
                line("--header-line", headerLine),
                line("--units-line", unitsLine),
                firstLine());
    }

    private OptionalLong firstLine() {
        OptionalLong line = line("--first-line", firstLine);
        if (line.isPresent() && line.getAsLong() == 0) {
            throw CommandFailure.usage("--first-line " + firstLine + ": write the number of a line");
        }
        return line;
    }

    private static OptionalLong line(String option, String text) {
        return word(option, text, ImportText::lineOrNone).map(OptionalLong::of).orElse(OptionalLong.empty());
    }

    private static <T> Optional<T> word(String option, String text, ScalarParser<T> parser) {
        if (text == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(parser.parse(text));
        } catch (BadValueException e) {
            throw CommandFailure.usage(option + ": " + e.getMessage());
        }
    }
}
