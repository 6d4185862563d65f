// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.dutywright.capture.OutputFile;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.report.CyclesArrow;
import org.dutywright.report.CyclesCsv;
import picocli.CommandLine.Option;

/** Where results go: the part of the command line that {@code measure} and {@code check} share. */
final class ResultOptions {
    private static final String STANDARD_OUTPUT = "-";

    @Option(names = "--json", paramLabel = "FILE", description = "writes the result as JSON; - is standard output")
    private String json;

    @Option(
            names = "--cycles",
            paramLabel = "FILE",
            description = "writes a table with a row for each cycle, the disturbed ones included; .csv or .arrow")
    private Path cycles;

    @Option(names = "--quiet", description = "no messages and no progress, only results and errors")
    private boolean quiet;

    boolean quiet() {
        return quiet;
    }

    /** Whether standard output belongs to the JSON alone. */
    boolean jsonToStandardOutput() {
        return STANDARD_OUTPUT.equals(json);
    }

    /** Refuses outputs that cannot be, before any work begins. */
    void check(CaptureJob job, List<Path> inputs) throws IOException {
        Outputs outputs = new Outputs();
        job.imported().saveTo().ifPresent(file -> outputs.add("--save-import-settings", file));
        jsonFile().ifPresent(file -> outputs.add("--json", file));
        if (cycles != null) {
            if (!cyclesEndIn(".csv") && !cyclesEndIn(".arrow")) {
                throw CommandFailure.usage("--cycles " + cycles + ": give a name that ends in .csv or .arrow");
            }
            outputs.add("--cycles", cycles);
        }
        outputs.check(inputs);
    }

    private boolean cyclesEndIn(String ending) {
        return cycles.toString().toLowerCase(Locale.ROOT).endsWith(ending);
    }

    private Optional<Path> jsonFile() {
        return json == null || jsonToStandardOutput() ? Optional.empty() : Optional.of(Path.of(json));
    }

    /** Writes the table of cycles and the JSON, whichever was asked for. */
    void write(CaptureMeasurement measurement, OutputFile.Content document, Session session) throws IOException {
        if (cycles != null) {
            OutputFile.Content table = cyclesEndIn(".arrow")
                    ? stream -> CyclesArrow.write(measurement, stream, session.progress())
                    : stream -> CyclesCsv.write(measurement, stream, session.progress());
            OutputFile.write(cycles, table);
        }
        if (jsonFile().isPresent()) {
            OutputFile.write(jsonFile().get(), document);
        }
        session.checkCancelled();
        if (jsonToStandardOutput()) {
            // Whole or not at all, as with a file; it is small, for events are listed up to a limit.
            ByteArrayOutputStream whole = new ByteArrayOutputStream();
            document.writeTo(whole);
            session.print(whole.toByteArray());
        }
    }
}
