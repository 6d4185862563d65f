// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.dutywright.sensor.Catalogue;
import org.dutywright.text.ProblemsException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Prints the text of one sensor, as its author wrote it. */
@Command(name = "show", description = "Prints the text of one sensor, as its author wrote it.")
final class CatalogueShowCommand implements Callable<Integer> {
    private final Session session;

    @Parameters(paramLabel = "ID", description = "the sensor")
    private String id;

    @Mixin
    private CatalogueOptions options;

    CatalogueShowCommand(Session session) {
        this.session = session;
    }

    @Override
    public Integer call() throws IOException, ProblemsException {
        Catalogue.Entry entry = options.sensor(id, session);
        session.print(entry.text().lines().toList());
        session.message("from " + entry.origin());
        return ExitStatus.DONE;
    }
}
