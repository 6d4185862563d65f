// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.jar.JarFile;
import java.util.jar.Manifest;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.InstalledReaders;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.Measurement;
import org.dutywright.report.TextTable;
import picocli.CommandLine.Command;

/** Lists what was found beside the program itself and what it brings along. */
@Command(
        name = "plugins",
        description = "Lists the readers and measurements that were found, each with its origin and version.")
final class PluginsCommand implements Callable<Integer> {
    private final Session session;

    PluginsCommand(Session session) {
        this.session = session;
    }

    @Override
    public Integer call() throws IOException {
        TextTable table = TextTable.create().row("kind", "id", "version", "origin", "title");
        InstalledReaders readers = InstalledReaders.find();
        for (CaptureReader reader : readers.readers()) {
            row(table, "reader", reader.id(), reader.title(), reader.getClass());
        }
        List<String> problems = new ArrayList<>(readers.problems());
        CaptureMeasurer measurer = CaptureMeasurer.withInstalled();
        for (Measurement measurement : measurer.measurements()) {
            row(table, "measurement", measurement.id(), measurement.title(), measurement.getClass());
        }
        measurer.refused().forEach(reason -> problems.add("measurement is refused: " + reason));
        session.print(table.lines());
        session.print(problems);
        return ExitStatus.DONE;
    }

    private static void row(TextTable table, String kind, String id, String title, Class<?> type) {
        Origin origin = Origin.of(type);
        table.row(kind, id, origin.version(), origin.place(), title);
    }

    /** Where a class comes from: its jar or folder, and the version in the manifest there. */
    private record Origin(String place, String version) {
        static Origin of(Class<?> type) {
            CodeSource source = type.getProtectionDomain().getCodeSource();
            if (source == null) {
                return new Origin("unknown", "unknown");
            }
            try {
                Path place = Path.of(source.getLocation().toURI());
                return new Origin(place.getFileName().toString(), version(place));
            } catch (URISyntaxException | IOException e) {
                return new Origin(source.getLocation().toString(), "unknown");
            }
        }

        private static String version(Path place) throws IOException {
            Manifest manifest = manifest(place);
            String version = manifest.getMainAttributes().getValue("Bundle-Version");
            return version == null ? "unknown" : version;
        }

        private static Manifest manifest(Path place) throws IOException {
            if (Files.isDirectory(place)) {
                Path file = place.resolve("META-INF").resolve("MANIFEST.MF");
                if (!Files.exists(file)) {
                    return new Manifest();
                }
                try (InputStream stream = Files.newInputStream(file)) {
                    return new Manifest(stream);
                }
            }
            try (JarFile jar = new JarFile(place.toFile())) {
                Manifest manifest = jar.getManifest();
                return manifest == null ? new Manifest() : manifest;
            }
        }
    }
}
