// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.dutywright.capture.CannotCreateException;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.UnreadableException;
import org.dutywright.diagnosis.CheckResult;
import org.dutywright.diagnosis.Position;
import org.dutywright.report.VerdictText;
import org.dutywright.sensor.Catalogue;
import org.dutywright.simulation.DemoScenarios;
import org.dutywright.simulation.Expectation;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.Simulator;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Simulates the demonstration captures and checks each, from its file, as {@code check} does. */
@Command(
        name = "demo",
        description = "Simulates the demonstration captures of the invented Harrow & Tern works yard into a folder,"
                + " checks each of them and prints a line for each. Exit status 0 if every verdict is the expected one,"
                + " else 1.")
final class DemoCommand implements Callable<Integer> {
    private final Session session;

    @Option(names = "--to", paramLabel = "FOLDER", required = true, description = "made if it is not there")
    private Path folder;

    @Option(names = "--quiet", description = "no messages and no progress")
    private boolean quiet;

    DemoCommand(Session session) {
        this.session = session;
    }

    @Override
    public Integer call() throws IOException, UnreadableException {
        session.beQuiet(quiet);
        makeFolder();
        List<String> summary = new ArrayList<>();
        boolean asExpected = true;
        for (DemoScenarios.Demo demo : DemoScenarios.all()) {
            Outcome outcome = check(demo);
            session.print(List.of(outcome.line()));
            summary.add(outcome.line());
            asExpected &= outcome.asExpected();
        }
        Path summaryFile = folder.resolve("summary.txt");
        OutputFile.write(
                summaryFile,
                stream -> stream.write((String.join("\n", summary) + "\n").getBytes(StandardCharsets.UTF_8)));
        session.message("captures, scenarios, truths and results (.check.json) are in " + folder + ", these lines in "
                + summaryFile);
        return asExpected ? ExitStatus.DONE : ExitStatus.DOES_NOT_CONFORM;
    }

    private void makeFolder() throws IOException {
        try {
            Files.createDirectories(folder);
        } catch (FileAlreadyExistsException e) {
            throw new CannotCreateException(folder, "it is a file; name a folder");
        } catch (IOException e) {
            throw new CannotCreateException(folder, e);
        }
    }

    /** What became of one demonstration. */
    private record Outcome(String line, boolean asExpected) {}

    private Outcome check(DemoScenarios.Demo demo) throws IOException, UnreadableException {
        Path csv = folder.resolve(demo.name() + ".csv");
        OutputFile.write(
                folder.resolve(demo.name() + ".yaml"),
                stream -> stream.write(demo.text().getBytes(StandardCharsets.UTF_8)));
        Simulator.write(demo.scenario(), csv, session.progress());
        List<Outcome> outcomes = new ArrayList<>();
        job(demo.scenario(), csv).run(session, (result, document) -> {
            OutputFile.write(folder.resolve(demo.name() + ".check.json"), document);
            outcomes.add(outcome(demo, result));
        });
        return outcomes.get(0);
    }

    private static CheckJob job(Scenario scenario, Path csv) {
        Catalogue.Entry entry = Catalogue.builtIn()
                .find(scenario.sensor())
                .orElseThrow(() -> new IllegalStateException("no built-in sensor " + scenario.sensor()));
        // A tester would read the supply with a meter where no channel recorded it.
        OptionalDouble supplyVolts = scenario.supply().isPresent()
                        && scenario.supply().get().recordedAs().isEmpty()
                ? OptionalDouble.of(scenario.supply().get().volts())
                : OptionalDouble.empty();
        Optional<Position> position = scenario.knownPosition().flatMap(Position::ofWord);
        return new CheckJob(CaptureJob.ofFile(csv), entry.sensor(), supplyVolts, position, List.of());
    }

    private static Outcome outcome(DemoScenarios.Demo demo, CheckResult result) {
        Optional<String> expected = demo.scenario().expectation().map(Expectation::verdict);
        boolean asExpected = expected.map(result.verdict().word()::equals).orElse(true);
        String line = demo.name() + ": " + VerdictText.line(result);
        return new Outcome(
                asExpected
                        ? line
                        : line + " UNEXPECTED, should be "
                                + expected.orElseThrow().replace('-', ' '),
                asExpected);
    }
}
