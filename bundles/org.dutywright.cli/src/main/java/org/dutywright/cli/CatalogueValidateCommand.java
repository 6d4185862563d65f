// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.dutywright.sensor.Catalogue;
import org.dutywright.sensor.SensorText;
import org.dutywright.text.Problem;
import org.dutywright.text.ProblemsException;
import org.dutywright.text.TextTree;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Looks for problems in sensor texts. */
@Command(
        name = "validate",
        description = "Looks for problems in sensor texts and prints all of them as FILE:LINE:COLUMN: message;"
                + " without a FILE in the whole catalogue.")
final class CatalogueValidateCommand implements Callable<Integer> {
    private final Session session;

    @Parameters(arity = "0..*", paramLabel = "FILE", description = "sensor texts")
    private List<Path> files = new ArrayList<>();

    @Mixin
    private CatalogueOptions options;

    CatalogueValidateCommand(Session session) {
        this.session = session;
    }

    @Override
    public Integer call() throws IOException, ProblemsException {
        List<String> valid = new ArrayList<>();
        List<Problem> problems = new ArrayList<>();
        Inputs.check(files);
        if (files.isEmpty()) {
            Catalogue catalogue = options.load();
            catalogue.entries().forEach(entry -> valid.add(entry.sensor().id() + " (" + entry.origin() + "): valid"));
            problems.addAll(catalogue.problems());
        }
        for (Path file : files) {
            try {
                valid.add(file + ": valid, sensor "
                        + SensorText.parse(file.toString(), TextTree.read(file)).id());
            } catch (ProblemsException e) {
                problems.addAll(e.problems());
            }
        }
        session.print(valid);
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
        return ExitStatus.DONE;
    }
}
