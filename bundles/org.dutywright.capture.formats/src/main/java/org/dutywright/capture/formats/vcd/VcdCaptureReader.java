// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.vcd;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Channel;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/** Reads value change dumps; what becomes of them is said in the package description. */
@ServiceProvider(CaptureReader.class)
public final class VcdCaptureReader implements CaptureReader {
    private static final int KNOWN = 90;
    private static final int HEAD_BYTES = 1 << 12;
    private static final int MOST_CHANNELS = 1000;
    private static final int MOST_NAMED = 10;
    private static final Pattern START =
            Pattern.compile("\\s*\\$(?:date|version|comment|timescale|scope|var)\\s.*", Pattern.DOTALL);

    /** Makes the reader. */
    public VcdCaptureReader() {}

    @Override
    public String id() {
        return "vcd";
    }

    @Override
    public String title() {
        return "value change dump (VCD)";
    }

    @Override
    public int likelihood(byte[] head) {
        String text = new String(head, 0, Math.min(HEAD_BYTES, head.length), StandardCharsets.ISO_8859_1);
        return START.matcher(text).matches() && text.contains("$end") ? KNOWN : 0;
    }

    @Override
    public Capture read(Path file, ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        Set<String> neverKnown = new HashSet<>();
        Optional<Capture> capture = read(file, settings, neverKnown, progress);
        // signals that are never known stand in the way of all others: once more without them
        return capture.isPresent()
                ? capture.get()
                : read(file, settings, neverKnown, progress)
                        .orElseThrow(() -> new IllegalStateException("the file changed while it was read"));
    }

    /** Reads; empty if there are signals that are never known, which are then added to the set. */
    private static Optional<Capture> read(Path file, ReadSettings settings, Set<String> neverKnown, Progress progress)
            throws UnreadableException, IOException {
        try (ByteSource source = ByteSource.open(file, progress)) {
            Tokens tokens = new Tokens(source);
            Header header = Header.read(tokens);
            List<ColumnChoice.Chosen> chosen = new ArrayList<>();
            for (ColumnChoice.Chosen one : ColumnChoice.choose(file, columns(header), settings)) {
                if (!neverKnown.contains(code(header, one))) {
                    chosen.add(one);
                }
            }
            if (chosen.size() > MOST_CHANNELS) {
                String problem = "has " + chosen.size() + " signals, more than " + MOST_CHANNELS;
                throw UnreadableException.lacks(file, problem, "pick some with --channel");
            }
            List<Channel> channels =
                    chosen.stream().map(ColumnChoice.Chosen::channel).toList();
            try (CaptureBuilder builder = CaptureBuilder.stamped(channels)) {
                Changes changes = changes(tokens, header, chosen, builder);
                List<ColumnChoice.Chosen> unknown = IntStream.range(0, chosen.size())
                        .filter(i -> !changes.wasKnown(i))
                        .mapToObj(chosen::get)
                        .toList();
                if (!unknown.isEmpty()) {
                    checkUnknown(file, unknown, chosen.size(), settings);
                    unknown.forEach(one -> neverKnown.add(code(header, one)));
                    return Optional.empty();
                }
                builder.exactStamps(header.seconds(1));
                Map<String, String> guessed = guessed(header, neverKnown, changes);
                return Optional.of(builder.finish(source.source(), guessed, progress));
            }
        }
    }

    private static List<ColumnChoice.Column> columns(Header header) {
        List<ColumnChoice.Column> columns = new ArrayList<>();
        List<String> names = header.names();
        for (int i = 0; i < names.size(); i++) {
            columns.add(new ColumnChoice.Column(header.signals().get(i).path(), names.get(i), "", 1));
        }
        return columns;
    }

    private static String code(Header header, ColumnChoice.Chosen one) {
        return header.signals().get(one.column()).code();
    }

    private static Changes changes(
            Tokens tokens, Header header, List<ColumnChoice.Chosen> chosen, CaptureBuilder builder)
            throws UnreadableException, IOException {
        int[] signals = chosen.stream().mapToInt(ColumnChoice.Chosen::column).toArray();
        double[] factors =
                chosen.stream().mapToDouble(ColumnChoice.Chosen::factor).toArray();
        Changes changes = new Changes(tokens, header, signals, factors, builder);
        changes.read();
        return changes;
    }

    private static void checkUnknown(Path file, List<ColumnChoice.Chosen> unknown, int all, ReadSettings settings)
            throws UnreadableException {
        if (unknown.size() == all || !settings.channels().isEmpty()) {
            String name = unknown.get(0).channel().name();
            throw new UnreadableException(file, "", "'" + name + "' never has a value", "pick other signals");
        }
    }

    private static Map<String, String> guessed(Header header, Set<String> neverKnown, Changes changes) {
        Map<String, String> guessed = new LinkedHashMap<>();
        guessed.put("unit of time", header.seconds(1) + " s");
        guessed.put("rows", "two for each instant of a change, what held until then and what holds from then on");
        List<String> leftOut = new ArrayList<>(header.leftOut());
        header.signals().stream()
                .filter(signal -> neverKnown.contains(signal.code()))
                .forEach(signal -> leftOut.add(signal.path() + ": never has a value"));
        if (!leftOut.isEmpty()) {
            String more = leftOut.size() > MOST_NAMED ? "; and " + (leftOut.size() - MOST_NAMED) + " more" : "";
            guessed.put(
                    "signals left out",
                    String.join("; ", leftOut.subList(0, Math.min(MOST_NAMED, leftOut.size()))) + more);
        }
        if (changes.unknownSpans() > 0) {
            guessed.put("spans without a value", Long.toString(changes.unknownSpans()));
        }
        return guessed;
    }
}
