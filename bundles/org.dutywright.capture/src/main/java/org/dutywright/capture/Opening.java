// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Opens files with the reader that knows them. */
final class Opening {
    private static final int HEAD_BYTES = 1 << 16;

    private Opening() {}

    static Capture open(List<Path> files, ReadSettings settings, List<CaptureReader> readers, Progress progress)
            throws UnreadableException, IOException {
        List<CaptureReader> chosen = new ArrayList<>();
        for (Path file : files) {
            chosen.add(reader(file, settings, readers));
        }
        checkTaken(files, settings, chosen);
        if (files.size() == 1) {
            return read(files.get(0), settings, chosen.get(0), progress);
        }
        List<Capture> parts = new ArrayList<>();
        boolean done = false;
        try {
            // picks, scales and units speak of the whole: a column may be in any of the files
            ReadSettings each = settings.withChannels(List.of(), Map.of(), Map.of());
            for (int i = 0; i < files.size(); i++) {
                parts.add(read(files.get(i), each, chosen.get(i), progress));
            }
            Capture whole = JoinedChoice.of(Joining.join(parts, progress), settings);
            done = true;
            return whole;
        } finally {
            if (!done && !parts.isEmpty()) {
                List<Samples> held = parts.stream().map(Capture::samples).toList();
                Closing.all(held.get(0), held.subList(1, held.size()));
            }
        }
    }

    /** What is said of no use to any of the files is a mistake that should not pass in silence. */
    private static void checkTaken(List<Path> files, ReadSettings settings, List<CaptureReader> readers)
            throws UnreadableException {
        for (ReadSettings.Part part : ReadSettings.Part.values()) {
            if (settings.says(part)
                    && readers.stream().noneMatch(reader -> reader.takes().contains(part))) {
                throw UnreadableException.lacks(
                        files.get(0),
                        "is read as " + readers.get(0).title() + ", which has no use for settings of " + part.word(),
                        "leave them out");
            }
        }
    }

    private static Capture read(Path file, ReadSettings settings, CaptureReader reader, Progress progress)
            throws UnreadableException, IOException {
        ReadSettings taken = settings;
        taken = reader.takes().contains(ReadSettings.Part.TABLE) ? taken : taken.withTable(TableSettings.none());
        taken = reader.takes().contains(ReadSettings.Part.TIME) ? taken : taken.withTime(TimeSettings.none());
        taken = reader.takes().contains(ReadSettings.Part.FULL_SCALE)
                ? taken
                : taken.withFullScale(OptionalDouble.empty());
        Capture capture = reader.read(file, taken, progress);
        return capture.withAsRead(asRead(capture, taken).withFormat(Optional.of(reader.id())));
    }

    /** What the reader says of it, else what was said to the reader, and all channels by name. */
    private static ReadSettings asRead(Capture capture, ReadSettings given) {
        ReadSettings known = capture.asRead().equals(ReadSettings.none()) ? given : capture.asRead();
        if (!known.channels().isEmpty()) {
            return known;
        }
        List<ReadSettings.Pick> all = capture.channels().stream()
                .map(channel -> new ReadSettings.Pick(channel.name(), channel.name()))
                .toList();
        return known.withChannels(all, known.scales(), known.units());
    }

    private static CaptureReader reader(Path file, ReadSettings settings, List<CaptureReader> readers)
            throws UnreadableException, IOException {
        if (Files.isDirectory(file)) {
            throw new UnreadableException(file, "", "is a folder", "name a file in it");
        }
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            // it is read more than once: to look at it, and for its numbers
            throw new UnreadableException(file, "", "is no regular file", "save what comes from it as a file first");
        }
        byte[] head;
        try (InputStream stream = Files.newInputStream(file)) {
            head = stream.readNBytes(HEAD_BYTES);
        }
        if (head.length == 0) {
            throw new UnreadableException(file, "", "is empty", "record or export it again");
        }
        if (settings.format().isPresent()) {
            return named(file, settings.format().get(), readers);
        }
        Optional<CaptureReader> reader = likeliest(file, head, readers);
        if (reader.isEmpty()) {
            String known =
                    String.join(", ", readers.stream().map(CaptureReader::title).toList());
            throw new UnreadableException(
                    file, "", "is in no format that is known here (" + known + ")", "export the recording as CSV");
        }
        return reader.get();
    }

    private static CaptureReader named(Path file, String id, List<CaptureReader> readers) throws UnreadableException {
        for (CaptureReader reader : readers) {
            if (reader.id().equals(id)) {
                return reader;
            }
        }
        String known = String.join(", ", readers.stream().map(CaptureReader::id).toList());
        throw UnreadableException.lacks(file, "there is no reader of the format '" + id + "'", "there are " + known);
    }

    private static Optional<CaptureReader> likeliest(Path file, byte[] head, List<CaptureReader> readers)
            throws IOException {
        int best = 0;
        Optional<CaptureReader> found = Optional.empty();
        for (CaptureReader reader : readers) {
            int likelihood = reader.likelihood(file, head.clone());
            if (likelihood > best) {
                best = likelihood;
                found = Optional.of(reader);
            }
        }
        return found;
    }
}
