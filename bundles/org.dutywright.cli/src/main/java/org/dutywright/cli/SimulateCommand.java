// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.Simulator;
import org.dutywright.text.ProblemsException;
import org.dutywright.text.TextTree;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes a capture from a scenario text, faults included. */
@Command(
        name = "simulate",
        description = "Makes a capture from a scenario text, faults included, and writes what is true of it beside"
                + " it as FILE.truth.json.")
final class SimulateCommand implements Callable<Integer> {
    private final Session session;

    @Parameters(paramLabel = "SCENARIO", description = "the scenario text")
    private Path scenario;

    @Option(names = "--to", paramLabel = "FILE.csv", required = true, description = "the capture")
    private Path target;

    @Option(names = "--quiet", description = "no messages and no progress")
    private boolean quiet;

    SimulateCommand(Session session) {
        this.session = session;
    }

    @Override
    public Integer call() throws IOException, ProblemsException {
        session.beQuiet(quiet);
        Inputs.check(List.of(scenario));
        Path truth = Simulator.truthFile(target);
        new Outputs().add("--to", target).add("the truth of --to", truth).check(List.of(scenario));
        Scenario parsed = Scenario.parse(scenario.toString(), TextTree.read(scenario));
        Simulator.write(parsed, target, session.progress());
        session.message("wrote " + target + " and " + truth);
        return ExitStatus.DONE;
    }
}
