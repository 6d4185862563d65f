// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.dutywright.report.TextTable;
import org.dutywright.sensor.Catalogue;
import org.dutywright.text.ProblemsException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lists the sensors. */
@Command(name = "list", description = "Lists the sensors: id, title, where the text comes from.")
final class CatalogueListCommand implements Callable<Integer> {
    private final Session session;

    @Mixin
    private CatalogueOptions options;

    CatalogueListCommand(Session session) {
        this.session = session;
    }

    @Override
    public Integer call() throws IOException, ProblemsException {
        Catalogue catalogue = options.load();
        TextTable table = TextTable.create();
        for (Catalogue.Entry entry : catalogue.entries()) {
            table.row(entry.sensor().id(), entry.sensor().title(), entry.origin());
        }
        session.print(table.lines());
        if (!catalogue.problems().isEmpty()) {
            throw new ProblemsException(catalogue.problems());
        }
        return ExitStatus.DONE;
    }
}
