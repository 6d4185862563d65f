// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.export.CaptureWriter;
import org.dutywright.capture.formats.export.CaptureWriters;
import org.dutywright.text.ProblemsException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes a recording, or a part of one, in another format. */
@Command(
        name = "convert",
        description = "Writes a recording, or a part of one, in another format: .arrow keeps everything and opens"
                + " fastest, .csv and .npy hold every digit, .wav holds 16 bits a sample.")
final class ConvertCommand implements Callable<Integer> {
    private final Session session;

    @Mixin
    private ReadOptions read;

    @Option(
            names = "--to",
            paramLabel = "FILE",
            required = true,
            description = "the output, its format by its ending: .arrow, .csv, .wav or .npy")
    private Path target;

    @Option(
            names = "--from",
            paramLabel = "S",
            converter = Numbers.class,
            description = "starts here, in the file's time")
    private Double fromSeconds;

    @Option(
            names = "--until",
            paramLabel = "S",
            converter = Numbers.class,
            description = "ends here, in the file's time (here, --to is the output)")
    private Double untilSeconds;

    @Option(names = "--quiet", description = "no messages and no progress")
    private boolean quiet;

    ConvertCommand(Session session) {
        this.session = session;
    }

    @Override
    public Integer call() throws IOException, UnreadableException, ProblemsException {
        session.beQuiet(quiet);
        CaptureWriter writer = CaptureWriters.of(target)
                .orElseThrow(() -> CommandFailure.usage("--to " + target + ": its ending names no format; end it in "
                        + String.join(", ", CaptureWriters.endings())));
        if (fromSeconds != null && untilSeconds != null && untilSeconds <= fromSeconds) {
            throw CommandFailure.usage("--until " + untilSeconds + " must lie after --from " + fromSeconds);
        }
        Import imported = read.imported();
        Inputs.check(read.files());
        Outputs outputs = new Outputs().add("--to", target);
        imported.saveTo().ifPresent(file -> outputs.add("--save-import-settings", file));
        outputs.check(imported.inputs(read.files()));
        try (Capture whole = imported.open(read.files(), Map.of(), session)) {
            Capture part = Captures.between(whole, optional(fromSeconds), optional(untilSeconds));
            CaptureWriter.Prepared prepared = writer.prepare(part, said(imported), session.progress());
            OutputFile.write(target, prepared.content());
            session.checkCancelled();
            CaptureJob.tellGuesses(whole, session);
            prepared.remarks().forEach(session::message);
            session.message(
                    "wrote " + target + ": " + part.sampleCount() + " samples of " + String.join(", ", names(part)));
        }
        return ExitStatus.DONE;
    }

    private static List<String> names(Capture capture) {
        return capture.channels().stream().map(channel -> channel.name()).toList();
    }

    private Map<String, String> said(Import imported) {
        Map<String, String> said = new LinkedHashMap<>(imported.said());
        if (fromSeconds != null) {
            said.put("--from", fromSeconds.toString());
        }
        if (untilSeconds != null) {
            said.put("--until", untilSeconds.toString());
        }
        said.put("converted by", Version.text());
        return said;
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
