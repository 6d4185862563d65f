// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/** Reads a file that holds all parts of a record, each after a line that says which it is. */
final class CombinedFile {
    private static final Pattern PART = Pattern.compile(
            "---\\s*file type:\\s*(\\w+)(?:\\s+(\\w+))?\\s*(?::\\s*(\\d{1,18}))?\\s*---", Pattern.CASE_INSENSITIVE);

    private final ByteSource source;
    private final LineSource lines;
    private final List<String> config = new ArrayList<>();
    private int configLine;

    CombinedFile(ByteSource source) {
        this.source = source;
        lines = new LineSource(source);
    }

    /** The kind of part that a line starts, if it starts one. */
    static Optional<String> partOf(String line) {
        Matcher matcher = PART.matcher(line.strip());
        return matcher.matches() ? Optional.of(matcher.group(1)) : Optional.empty();
    }

    Capture read(ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        boolean inConfig = false;
        while (lines.next()) {
            String line = lines.text();
            Matcher part = PART.matcher(line.strip());
            if (part.matches()) {
                if (part.group(1).equalsIgnoreCase("DAT")) {
                    return data(part, settings, progress);
                }
                inConfig = part.group(1).equalsIgnoreCase("CFG") && config.isEmpty();
                configLine = inConfig ? (int) Math.min(Integer.MAX_VALUE, lines.number() + 1) : configLine;
            } else if (inConfig) {
                ComtradeCaptureReader.add(source, config, line);
            }
        }
        throw source.unreadable(source.position(), "there is no part with data", "export the record again");
    }

    private Capture data(Matcher part, ReadSettings settings, Progress progress)
            throws UnreadableException, IOException {
        if (config.isEmpty()) {
            throw source.unreadable(source.position(), "the data come before the configuration", "export it again");
        }
        Config parsed = ConfigParser.parse(source.file(), config, configLine);
        Optional<DataFormat> said = Optional.ofNullable(part.group(2)).flatMap(DataFormat::of);
        if (said.isPresent() && said.get() != parsed.format()) {
            throw new UnreadableException(
                    source.file(),
                    "line " + lines.number(),
                    "the data are " + said.get() + " and " + parsed.format() + " by the configuration",
                    "export the record again");
        }
        long bytes = part.group(3) == null ? Long.MAX_VALUE : Long.parseLong(part.group(3));
        return Records.of(source.file(), parsed, settings).read(source, lines, bytes, progress);
    }
}
