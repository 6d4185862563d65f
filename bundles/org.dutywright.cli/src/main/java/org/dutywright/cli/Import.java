// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.ImportSettings;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.report.ImportText;

/**
 * How files are read.
 *
 * @param settings what is said about them
 * @param text the file that part of it stands in
 * @param saveTo where it is to be kept, with all that was guessed
 */
record Import(ImportSettings settings, Optional<Path> text, Optional<Path> saveTo) {

    /** Nothing said. */
    static Import none() {
        return new Import(ImportSettings.none(), Optional.empty(), Optional.empty());
    }

    ReadSettings read() {
        return settings.read();
    }

    /** The files that must not be written to. */
    List<Path> inputs(List<Path> files) {
        List<Path> inputs = new ArrayList<>(files);
        text.ifPresent(inputs::add);
        return inputs;
    }

    /**
     * Opens a capture, and keeps how that was done if it is asked for.
     *
     * @param roles word of the role that the user gave to a channel, by its name
     */
    Capture open(List<Path> files, Map<String, String> roles, Session session) throws IOException, UnreadableException {
        text.ifPresent(file -> session.message("import settings '" + settings.name() + "' from " + file));
        Capture capture = opened(files, session);
        boolean kept = false;
        try {
            if (saveTo.isPresent()) {
                save(files, capture, roles, saveTo.get(), session);
            }
            kept = true;
            return capture;
        } finally {
            if (!kept) {
                capture.close();
            }
        }
    }

    private Capture opened(List<Path> files, Session session) throws IOException, UnreadableException {
        try {
            return Captures.open(files, read(), session.progress());
        } catch (UnreadableException e) {
            if (text.isPresent() && e.settingsAtFault()) {
                throw CommandFailure.usage(e.getMessage() + "; that is said in " + text.get() + " or by an option");
            }
            throw e;
        }
    }

    private void save(List<Path> files, Capture capture, Map<String, String> roles, Path target, Session session)
            throws IOException {
        String name = settings.name().isEmpty() ? "Read from " + files.get(0).getFileName() : settings.name();
        Map<String, String> all = new LinkedHashMap<>(settings.roles());
        all.putAll(roles);
        String written = ImportText.write(new ImportSettings(name, capture.asRead(), all));
        OutputFile.write(target, stream -> stream.write(written.getBytes(StandardCharsets.UTF_8)));
        session.message("wrote how it was read to " + target);
    }

    /** What is said, by option, for whoever reads the result later. */
    Map<String, String> said() {
        Map<String, String> said = new LinkedHashMap<>();
        text.ifPresent(file -> said.put("--import-settings", settings.name()));
        ReadSettings read = read();
        read.format().ifPresent(format -> said.put("--format", format));
        read.sampleRateHz().ifPresent(rate -> said.put("--sample-rate", Double.toString(rate)));
        put(
                said,
                "--channel",
                read.channels().stream()
                        .map(pick -> pick.column() + "=" + pick.name())
                        .toList());
        put(said, "--scale", pairs(read.scales()));
        put(
                said,
                "--unit",
                read.units().entrySet().stream()
                        .map(unit ->
                                unit.getKey() + "=" + unit.getValue().symbol().orElse("?"))
                        .toList());
        read.time().column().ifPresent(column -> said.put("--time-column", column));
        read.time().unit().flatMap(unit -> unit.symbol()).ifPresent(unit -> said.put("--time-unit", unit));
        read.fullScaleVolts().ifPresent(volts -> said.put("--full-scale", Double.toString(volts)));
        return said;
    }

    private static List<String> pairs(Map<String, Double> values) {
        return values.entrySet().stream()
                .map(entry -> entry.getKey() + "=" + number(entry.getValue()))
                .toList();
    }

    private static String number(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? Long.toString((long) value)
                : Double.toString(value);
    }

    private static void put(Map<String, String> said, String option, List<String> values) {
        if (!values.isEmpty()) {
            said.put(option, String.join(" ", values));
        }
    }
}
