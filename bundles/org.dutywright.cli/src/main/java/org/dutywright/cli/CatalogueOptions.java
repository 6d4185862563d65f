// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.dutywright.sensor.Catalogue;
import org.dutywright.text.ProblemsException;
import picocli.CommandLine.Option;

/** Which sensors there are: the built-in ones and those of the folders that the user adds. */
final class CatalogueOptions {
    @Option(
            names = "--catalogue",
            paramLabel = "FOLDER",
            description = "adds the sensor texts of a folder to the built-in ones; may be given again")
    private List<Path> folders = new ArrayList<>();

    /** The folders as the user named them. */
    List<String> folders() {
        return folders.stream().map(Path::toString).toList();
    }

    /** All sensors. */
    Catalogue load() throws IOException {
        Inputs.checkFolders(folders);
        Catalogue catalogue = Catalogue.builtIn();
        for (Path folder : folders) {
            catalogue = catalogue.with(folder);
        }
        return catalogue;
    }

    /**
     * One sensor. Problems of other texts are told as messages.
     *
     * @throws ProblemsException if it is not there, and texts that cannot be read may be the reason
     * @throws CommandFailure if it is not there
     */
    Catalogue.Entry sensor(String id, Session session) throws IOException, ProblemsException {
        Catalogue catalogue = load();
        Catalogue.Entry found = find(catalogue, id);
        catalogue.problems().forEach(problem -> session.message(problem.toString()));
        return found;
    }

    private static Catalogue.Entry find(Catalogue catalogue, String id) throws ProblemsException {
        var found = catalogue.find(id);
        if (found.isPresent()) {
            return found.get();
        }
        if (!catalogue.problems().isEmpty()) {
            throw new ProblemsException(catalogue.problems());
        }
        throw CommandFailure.usage(
                "no sensor " + id + "; " + catalogue.hint(id) + ", and 'dutywright catalogue list' shows all");
    }
}
