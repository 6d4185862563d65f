// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.UnreadableException;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.RecorderSettings;
import org.dutywright.report.RunSettings;
import org.dutywright.text.ProblemsException;

/**
 * Reading and measuring one capture, with everything the user said about it.
 *
 * @param files the capture
 * @param imported how to read it
 * @param plans roles and active levels given, by channel
 * @param pulse settings of measuring
 * @param fromSeconds start of the part to measure
 * @param toSeconds end of the part to measure
 */
record CaptureJob(
        List<Path> files,
        Import imported,
        Map<String, ChannelPlan> plans,
        PulseSettings pulse,
        OptionalDouble fromSeconds,
        OptionalDouble toSeconds) {

    /** Takes it from the command line; everything that can be wrong without reading a file is refused here. */
    static CaptureJob of(CaptureOptions options) throws IOException, ProblemsException {
        Map<String, ChannelPlan> given = ChannelPlans.parse(options.roles(), options.actives());
        PulseSettings pulse = options.pulseSettings();
        OptionalDouble from = options.fromSeconds();
        OptionalDouble to = options.toSeconds();
        Import imported = options.imported();
        Inputs.check(options.files());
        Map<String, ChannelPlan> plans =
                ChannelPlans.with(given, imported.settings().roles());
        return new CaptureJob(options.files(), imported, plans, pulse, from, to);
    }

    /** A whole file with nothing said about it. */
    static CaptureJob ofFile(Path file) {
        return new CaptureJob(
                List.of(file),
                Import.none(),
                Map.of(),
                PulseSettings.defaults(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /** The files that must not be written to. */
    List<Path> inputs() {
        return imported.inputs(files);
    }

    /** Reads the files, or the part of them that was asked for. */
    Capture open(Session session) throws IOException, UnreadableException {
        Capture whole = imported.open(files, ChannelPlans.roles(plans), session);
        boolean kept = false;
        try {
            ChannelPlans.checkNames(plans, whole);
            Capture part = fromSeconds.isPresent() || toSeconds.isPresent()
                    ? Captures.between(whole, fromSeconds, toSeconds)
                    : whole;
            kept = true;
            return part;
        } finally {
            if (!kept) {
                whole.close();
            }
        }
    }

    /**
     * Measures.
     *
     * @param allPlans what is known of the channels, {@link #plans} included
     */
    CaptureMeasurement measure(Capture capture, Map<String, ChannelPlan> allPlans, Session session) throws IOException {
        CaptureMeasurer measurer = CaptureMeasurer.withInstalled();
        measurer.refused().forEach(reason -> session.message("a measurement is left out: " + reason));
        return measurer.measure(capture, allPlans, pulse, session.progress());
    }

    /** What goes into the files about this run. */
    RunSettings runSettings(Optional<String> position, OptionalDouble supplyVolts, List<String> catalogues) {
        return new RunSettings(
                Version.text(),
                pulse.get(RecorderSettings.TIME_BASE),
                imported.read(),
                plans,
                fromSeconds,
                toSeconds,
                position,
                supplyVolts,
                catalogues);
    }

    /** Tells the user what the reader decided by looking at the files. */
    static void tellGuesses(Capture capture, Session session) {
        if (!capture.guessed().isEmpty()) {
            session.message(capture.guessed().entrySet().stream()
                    .map(guess -> guess.getKey() + ": " + guess.getValue())
                    .collect(Collectors.joining("; ", "guessed ", "")));
        }
    }
}
