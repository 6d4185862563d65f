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

/** Opens files with the reader that knows them. */
final class Opening {
    private static final int HEAD_BYTES = 1 << 16;

    private Opening() {}

    static Capture open(List<Path> files, ReadSettings settings, List<CaptureReader> readers, Progress progress)
            throws UnreadableException, IOException {
        if (files.size() == 1) {
            return read(files.get(0), settings, readers, progress);
        }
        List<Capture> parts = new ArrayList<>();
        boolean done = false;
        try {
            // picks and scales speak of the whole: a column may be in any of the files
            ReadSettings each = new ReadSettings(settings.sampleRateHz(), List.of(), Map.of());
            for (Path file : files) {
                parts.add(read(file, each, readers, progress));
            }
            Capture whole = chosen(Joining.join(parts, progress), settings);
            done = true;
            return whole;
        } finally {
            if (!done && !parts.isEmpty()) {
                List<Samples> held = parts.stream().map(Capture::samples).toList();
                Closing.all(held.get(0), held.subList(1, held.size()));
            }
        }
    }

    private static Capture chosen(Capture capture, ReadSettings settings) throws UnreadableException {
        List<ColumnChoice.Column> columns = capture.channels().stream()
                .map(channel -> new ColumnChoice.Column(channel.name(), channel.name(), channel.unit(), 1))
                .toList();
        Path file = capture.sources().get(0).path();
        List<ColumnChoice.Chosen> chosen = ColumnChoice.choose(file, columns, settings);
        List<Channel> channels =
                chosen.stream().map(ColumnChoice.Chosen::channel).toList();
        Samples samples = ColumnChoice.view(capture.samples(), chosen);
        return new Capture(
                capture.sources(), channels, capture.timeBase(), samples, capture.guessed(), capture.statedRates());
    }

    private static Capture read(Path file, ReadSettings settings, List<CaptureReader> readers, Progress progress)
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
        Optional<CaptureReader> reader = likeliest(file, head, readers);
        if (reader.isEmpty()) {
            String known =
                    String.join(", ", readers.stream().map(CaptureReader::title).toList());
            throw new UnreadableException(
                    file, "", "is in no format that is known here (" + known + ")", "export the recording as CSV");
        }
        return reader.get().read(file, settings, progress);
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
