// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.dutywright.capture.UnreadableException;
import org.dutywright.diagnosis.Position;
import org.dutywright.diagnosis.Verdict;
import org.dutywright.report.CheckText;
import org.dutywright.sensor.Catalogue;
import org.dutywright.text.ProblemsException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Compares a capture with one sensor of the catalogue. */
@Command(
        name = "check",
        description = "Compares a capture with one sensor of the catalogue: verdict, agreement of the channels,"
                + " likely place of the fault. Exit status 0 conforms, 1 does not conform, 2 inconclusive.")
final class CheckCommand implements Callable<Integer> {
    private final Session session;

    @Mixin
    private CaptureOptions capture;

    @Mixin
    private ResultOptions results;

    @Mixin
    private CatalogueOptions catalogue;

    @Option(
            names = "--sensor",
            paramLabel = "ID",
            required = true,
            description = "the sensor; catalogue list shows all")
    private String sensor;

    @Option(
            names = "--position",
            paramLabel = "released|pressed",
            description = "where the sensor stood during the whole capture, or the chosen part of it")
    private String position;

    @Option(
            names = "--supply",
            paramLabel = "VOLTS",
            converter = Numbers.class,
            description = "the supply, where no supply channel was recorded")
    private Double supplyVolts;

    CheckCommand(Session session) {
        this.session = session;
    }

    @Override
    public Integer call() throws IOException, UnreadableException, ProblemsException {
        session.beQuiet(results.quiet());
        Optional<Position> known = position();
        OptionalDouble supply = supply();
        CaptureJob recording = CaptureJob.of(capture);
        Catalogue.Entry entry = catalogue.sensor(sensor, session);
        CheckJob job = new CheckJob(recording, entry.sensor(), supply, known, catalogue.folders());
        results.check(recording, inputs(recording, entry));
        int[] status = {ExitStatus.INTERNAL};
        job.run(session, (result, document) -> {
            results.write(result.measurement(), document, session);
            CaptureJob.tellGuesses(result.measurement().capture(), session);
            if (!results.jsonToStandardOutput()) {
                session.print(CheckText.lines(result));
            }
            status[0] = status(result.verdict());
        });
        return status[0];
    }

    private static List<Path> inputs(CaptureJob recording, Catalogue.Entry entry) {
        List<Path> inputs = new ArrayList<>(recording.inputs());
        if (!entry.origin().equals(Catalogue.BUILT_IN)) {
            inputs.add(Path.of(entry.origin()));
        }
        return inputs;
    }

    private Optional<Position> position() {
        if (position == null) {
            return Optional.empty();
        }
        return Optional.of(Position.ofWord(position)
                .orElseThrow(() -> CommandFailure.usage("--position " + position + ": write released or pressed")));
    }

    private OptionalDouble supply() {
        if (supplyVolts == null) {
            return OptionalDouble.empty();
        }
        if (!(supplyVolts > 0)) {
            throw CommandFailure.usage("--supply " + supplyVolts + ": must be above 0");
        }
        return OptionalDouble.of(supplyVolts);
    }

    static int status(Verdict verdict) {
        return switch (verdict) {
            case CONFORMS -> ExitStatus.DONE;
            case DOES_NOT_CONFORM -> ExitStatus.DOES_NOT_CONFORM;
            case INCONCLUSIVE -> ExitStatus.INCONCLUSIVE;
        };
    }
}
