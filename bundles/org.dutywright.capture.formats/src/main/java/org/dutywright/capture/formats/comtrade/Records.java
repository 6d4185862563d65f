// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.Channel;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;
import org.dutywright.units.ScaledUnit;

/** Makes a capture of the records of data that belong to a configuration. */
final class Records {
    private static final int MOST_CHANNELS = 1000;

    private final Config config;
    private final List<ColumnChoice.Chosen> chosen;
    private final OptionalDouble sampleRateHz;
    private final Map<String, String> guessed = new LinkedHashMap<>();

    private Records(Path file, Config config, ReadSettings settings) throws UnreadableException {
        this.config = config;
        guessed.put("record", "IEEE C37.111-" + config.revision() + ", " + config.format());
        List<ColumnChoice.Column> columns = columns();
        chosen = ColumnChoice.choose(file, columns, settings);
        if (chosen.size() > MOST_CHANNELS) {
            throw UnreadableException.lacks(
                    file, "has " + chosen.size() + " channels, more than " + MOST_CHANNELS, "pick some with --channel");
        }
        sampleRateHz = sampleRate(settings);
        config.triggerSeconds().ifPresent(seconds -> guessed.put("trigger", seconds + " s after the first sample"));
        for (ColumnChoice.Chosen one : chosen) {
            if (one.column() < config.analogs().size()) {
                say(one.channel().name(), config.analogs().get(one.column()));
            }
        }
    }

    static Records of(Path configFile, Config config, ReadSettings settings) throws UnreadableException {
        return new Records(configFile, config, settings);
    }

    private List<ColumnChoice.Column> columns() {
        List<ColumnChoice.Column> columns = new ArrayList<>();
        for (Config.Analog analog : config.analogs()) {
            Optional<ScaledUnit> unit = ScaledUnit.parse(analog.unit());
            String symbol = unit.map(found -> found.unit().symbol()).orElse("");
            double factor = unit.map(ScaledUnit::factor).orElse(1.0);
            String name = analog.name().isEmpty() ? "channel" + (columns.size() + 1) : shown(analog.name());
            columns.add(new ColumnChoice.Column(shown(analog.name()), name, symbol, factor));
        }
        for (String digital : config.digitals()) {
            String name = digital.isEmpty() ? "channel" + (columns.size() + 1) : shown(digital);
            columns.add(new ColumnChoice.Column(shown(digital), name, "", 1));
        }
        return columns;
    }

    /** A name in one line, and no longer than one that can be told from others at a glance. */
    private static String shown(String name) {
        String line = name.replaceAll("[\\p{Cntrl}\\p{Zl}\\p{Zp}]+", " ").strip();
        return line.length() <= 200 ? line : line.substring(0, 200);
    }

    private OptionalDouble sampleRate(ReadSettings settings) {
        if (config.rates().size() == 1) {
            if (settings.sampleRateHz().isPresent()) {
                guessed.put("given sample rate", "not used, because the configuration says one");
            }
            return OptionalDouble.of(config.rates().get(0).hertz());
        }
        return config.rates().isEmpty() ? settings.sampleRateHz() : OptionalDouble.empty();
    }

    private void say(String name, Config.Analog analog) {
        if (!analog.unit().isEmpty() && ScaledUnit.parse(analog.unit()).isEmpty()) {
            add("units not known", name + ": '" + LineSource.quote(analog.unit()) + "'");
        }
        if (analog.side().equals("P") || analog.side().equals("S")) {
            add("P".equals(analog.side()) ? "primary values" : "secondary values", name);
        }
        if (analog.skewMicroseconds() != 0) {
            add("time skew, not applied", name + " " + analog.skewMicroseconds() + " us");
        }
    }

    private void add(String key, String value) {
        guessed.merge(key, value, (before, more) -> before + ", " + more);
    }

    /**
     * Reads the data.
     *
     * @param source stands at their first byte
     * @param lines of the same source
     * @param bytes most bytes that they may take
     */
    Capture read(ByteSource source, LineSource lines, long bytes, Progress progress)
            throws UnreadableException, IOException {
        List<Channel> channels =
                chosen.stream().map(ColumnChoice.Chosen::channel).toList();
        try (CaptureBuilder builder = sampleRateHz.isPresent()
                ? CaptureBuilder.even(channels, 0, sampleRateHz.getAsDouble())
                : CaptureBuilder.stamped(channels)) {
            RecordTaker taker = new RecordTaker(source.file(), config, chosen, builder, sampleRateHz.isPresent());
            if (config.format() == DataFormat.ASCII) {
                new AsciiRecords(source, lines, config).read(taker);
            } else {
                new BinaryRecords(source, config, bytes).read(taker);
            }
            taker.finish(guessed);
            sayCounts(builder);
            return builder.finish(source.source(), guessed, progress);
        }
    }

    private void sayCounts(CaptureBuilder builder) {
        for (int i = 0; i < chosen.size() && config.format() == DataFormat.BINARY; i++) {
            ColumnChoice.Chosen one = chosen.get(i);
            if (one.column() < config.analogs().size()) {
                Config.Analog analog = config.analogs().get(one.column());
                double scale = analog.a() * one.factor();
                double offset = analog.b() * one.factor();
                if (Double.isFinite(scale) && scale != 0 && Double.isFinite(offset)) {
                    builder.counts(i, new CountScale(scale, offset));
                }
            }
        }
    }
}
