// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Source;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/** Reads COMTRADE records; what it takes is said in the package description. */
@ServiceProvider(CaptureReader.class)
public final class ComtradeCaptureReader implements CaptureReader {
    private static final int KNOWN = 95;
    private static final int HEAD_BYTES = 1 << 12;
    private static final int MOST_CONFIG_LINES = 20_000;

    /** Makes the reader. */
    public ComtradeCaptureReader() {}

    @Override
    public String id() {
        return "comtrade";
    }

    @Override
    public String title() {
        return "COMTRADE record";
    }

    @Override
    public int likelihood(byte[] head) {
        return isCombined(head) || isConfig(head) ? KNOWN : 0;
    }

    /** Data say nothing of themselves; they are known by a configuration beside them. */
    @Override
    public int likelihood(Path file, byte[] head) throws IOException {
        int own = likelihood(head);
        return own == 0 && configBeside(file).isPresent() ? KNOWN : own;
    }

    private static boolean isCombined(byte[] head) {
        return text(head).strip().toLowerCase(Locale.ROOT).startsWith("--- file type:");
    }

    private static boolean isConfig(byte[] head) {
        return ConfigParser.isConfig(text(head).lines().limit(2).toList());
    }

    private static String text(byte[] head) {
        return new String(head, 0, Math.min(HEAD_BYTES, head.length), StandardCharsets.ISO_8859_1);
    }

    private static byte[] head(Path file) throws IOException {
        try (InputStream stream = Files.newInputStream(file)) {
            return stream.readNBytes(HEAD_BYTES);
        }
    }

    private static Optional<Path> configBeside(Path data) throws IOException {
        Optional<Path> config = endsWith(data, ".dat") ? beside(data, ".cfg") : Optional.empty();
        return config.isPresent() && isConfig(head(config.get())) ? config : Optional.empty();
    }

    private static boolean endsWith(Path file, String ending) {
        return file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(ending);
    }

    private static Optional<Path> beside(Path file, String ending) {
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        String base = dot < 0 ? name : name.substring(0, dot);
        for (String way : List.of(ending, ending.toUpperCase(Locale.ROOT), "." + capital(ending.substring(1)))) {
            Path found = file.resolveSibling(base + way);
            if (Files.isRegularFile(found)) {
                return Optional.of(found);
            }
        }
        return Optional.empty();
    }

    private static String capital(String word) {
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }

    @Override
    public Capture read(Path file, ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        byte[] head = head(file);
        if (isCombined(head)) {
            try (ByteSource source = ByteSource.open(file, progress)) {
                return new CombinedFile(source).read(settings, progress);
            }
        }
        if (isConfig(head)) {
            Path data = beside(file, ".dat")
                    .orElseThrow(() -> new UnreadableException(
                            file,
                            "",
                            "is a COMTRADE configuration without its data",
                            "put the .dat file of the same name beside it"));
            return pair(file, file, data, settings, progress);
        }
        Path config = configBeside(file)
                .orElseThrow(() ->
                        new UnreadableException(file, "byte 0", "is no COMTRADE record", "name its .cfg or .cff file"));
        return pair(file, config, file, settings, progress);
    }

    private static Capture pair(Path named, Path configFile, Path data, ReadSettings settings, Progress progress)
            throws UnreadableException, IOException {
        Config config;
        Source configSource;
        try (ByteSource source = ByteSource.open(configFile, Progress.NONE)) {
            LineSource lines = new LineSource(source);
            List<String> text = new ArrayList<>();
            while (lines.next()) {
                add(source, text, lines.text());
            }
            config = ConfigParser.parse(configFile, text, 1);
            configSource = source.source();
        }
        try (ByteSource source = ByteSource.open(data, progress)) {
            Records records = Records.of(configFile, config, settings);
            Capture capture = records.read(source, new LineSource(source), Long.MAX_VALUE, progress);
            Source dataSource = capture.sources().get(0);
            List<Source> both =
                    named.equals(configFile) ? List.of(configSource, dataSource) : List.of(dataSource, configSource);
            return new Capture(both, capture.channels(), capture.timeBase(), capture.samples(), capture.guessed());
        }
    }

    static void add(ByteSource source, List<String> lines, String line) throws UnreadableException {
        if (lines.size() == MOST_CONFIG_LINES) {
            throw source.unreadable(
                    source.position(), "the configuration has more than " + MOST_CONFIG_LINES + " lines", "");
        }
        lines.add(line);
    }
}
