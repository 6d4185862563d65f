// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Holds the commands on the catalogue. */
@Command(
        name = "catalogue",
        description = "The catalogue of sensors and their limits.",
        synopsisSubcommandLabel = "COMMAND")
final class CatalogueCommand implements Callable<Integer> {
    @Override
    public Integer call() {
        throw CommandFailure.usage("catalogue what? write list, show ID or validate [FILE...]");
    }
}
