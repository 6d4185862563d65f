// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.dutywright.capture.Delimiter;
import org.dutywright.capture.ImportSettings;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.TableSettings;
import org.dutywright.capture.TimeSettings;
import org.dutywright.report.internal.ImportWriter;
import org.dutywright.text.BadValueException;
import org.dutywright.text.MapReader;
import org.dutywright.text.Nearest;
import org.dutywright.text.Problems;
import org.dutywright.text.ProblemsException;
import org.dutywright.text.ScalarParser;
import org.dutywright.text.TextNode;
import org.dutywright.text.TextTree;
import org.dutywright.units.Dimension;
import org.dutywright.units.Quantity;
import org.dutywright.units.ScaledUnit;
import org.dutywright.units.UnitException;

/** Reads and writes import settings, {@code schema: dutywright.import/1}; the package description shows a text. */
public final class ImportText {
    /** The schema that the first key names. */
    public static final String SCHEMA = "dutywright.import/1";

    /** The encodings that a text table may be said to have. */
    public static final List<Charset> ENCODINGS = List.of(
            StandardCharsets.UTF_8,
            StandardCharsets.UTF_16LE,
            StandardCharsets.UTF_16BE,
            StandardCharsets.ISO_8859_1,
            Charset.forName("windows-1252"));

    private static final long MOST_LINES = 100_000;

    private ImportText() {}

    /**
     * Reads settings.
     *
     * @param fileName the file as the user named it, for messages
     * @param roles words of the roles that a channel may have
     * @throws ProblemsException with all problems of the text
     */
    public static ImportSettings parse(String fileName, String content, List<String> roles) throws ProblemsException {
        TextNode root = TextTree.parse(fileName, content);
        Problems problems = new Problems(fileName);
        MapReader map = MapReader.of(root, problems, "a text of import settings");
        map.required("schema", ImportText::schema, SCHEMA);
        if (map.node("schema").orElse(null) instanceof TextNode.ScalarNode schema
                && !schema.text().startsWith("dutywright.import")) {
            // the keys of another text are no mistakes of their own
            problems.throwIfAny();
        }
        ImportSettings settings = read(map, roles);
        problems.throwIfAny();
        return settings;
    }

    /** Writes settings as {@link #parse} reads them. */
    public static String write(ImportSettings settings) {
        return ImportWriter.write(settings);
    }

    private static ImportSettings read(MapReader map, List<String> roles) {
        String name = map.required("name", ScalarParser.line(), "Bench recorder, text export")
                .orElse("");
        Optional<String> format = map.optional("format", ScalarParser.line());
        Optional<Double> rate = map.optional("sampleRate", positive(Dimension.FREQUENCY));
        TableSettings table = map.child("table").map(ImportText::readTable).orElse(TableSettings.none());
        TimeSettings time = map.child("time", "{column: \"time (ms)\", unit: ms}")
                .map(ImportText::readTime)
                .orElse(TimeSettings.none());
        Optional<Double> fullScale = map.optional("fullScale", positive(Dimension.VOLTAGE));
        Channels channels = new Channels();
        for (MapReader channel : map.children("channels", "a channel")) {
            channels.read(channel, roles);
        }
        map.finish();
        ReadSettings read = new ReadSettings(
                format,
                toOptional(rate),
                channels.picks,
                channels.scales,
                channels.units,
                toOptional(fullScale),
                time,
                table);
        return new ImportSettings(name, read, channels.roles);
    }

    private static TableSettings readTable(MapReader map) {
        TableSettings table = new TableSettings(
                map.optional("encoding", ImportText::encoding),
                map.optional("delimiter", ImportText::delimiter),
                map.optional("decimalMark", ScalarParser.word(List.of("point", "comma")))
                        .map(word -> word.equals("comma")),
                line(map.optional("headerLine", ImportText::lineOrNone)),
                line(map.optional("unitsLine", ImportText::lineOrNone)),
                line(map.optional("firstLine", ScalarParser.whole(1, MOST_LINES))));
        map.finish();
        return table;
    }

    private static TimeSettings readTime(MapReader map) {
        TimeSettings time = new TimeSettings(
                map.optional("column", ScalarParser.line()), map.optional("unit", ImportText::timeUnit));
        map.finish();
        return time;
    }

    /** The channels of a text as they gather. */
    private static final class Channels {
        private final List<ReadSettings.Pick> picks = new ArrayList<>();
        private final Map<String, Double> scales = new LinkedHashMap<>();
        private final Map<String, ScaledUnit> units = new LinkedHashMap<>();
        private final Map<String, String> roles = new LinkedHashMap<>();
        private final Map<String, Integer> lines = new LinkedHashMap<>();

        void read(MapReader map, List<String> words) {
            Optional<String> column = map.required("column", ScalarParser.line(), "\"signal1 (V)\"");
            Optional<String> name = map.required("name", ScalarParser.line(), "signal1");
            Optional<ScaledUnit> unit = map.optional("unit", ImportText::unit);
            Optional<Double> scale = map.optional("scale", ImportText::scale);
            Optional<String> role = map.optional("role", ScalarParser.word(words));
            map.finish();
            if (column.isEmpty() || name.isEmpty()) {
                return;
            }
            Integer before = lines.putIfAbsent(name.get(), map.markOf("name").line());
            if (before != null) {
                map.problemAt(
                        "name",
                        "the channel '" + name.get() + "' stands here a second time; the first is in line " + before);
            }
            picks.add(new ReadSettings.Pick(column.get(), name.get()));
            unit.ifPresent(it -> units.put(name.get(), it));
            scale.ifPresent(it -> scales.put(name.get(), it));
            role.ifPresent(it -> roles.put(name.get(), it));
        }
    }

    private static String schema(String text) throws BadValueException {
        if (!text.equals(SCHEMA)) {
            throw new BadValueException("'" + text + "' is not a schema that this version reads; write " + SCHEMA);
        }
        return text;
    }

    private static ScalarParser<Double> positive(Dimension dimension) {
        return text -> {
            try {
                double value = Quantity.parse(text, dimension).value();
                if (value > 0) {
                    return value;
                }
            } catch (UnitException e) {
                throw new BadValueException(e.getMessage());
            }
            throw new BadValueException("'" + text.strip() + "' must be above 0");
        };
    }

    /**
     * An encoding by its name.
     *
     * @throws BadValueException if it is none of {@link #ENCODINGS}
     */
    public static Charset encoding(String text) throws BadValueException {
        List<String> names = ENCODINGS.stream().map(Charset::name).toList();
        for (Charset charset : ENCODINGS) {
            if (charset.name().equalsIgnoreCase(text.strip())) {
                return charset;
            }
        }
        return Charset.forName(ScalarParser.word(names).parse(text));
    }

    /**
     * A delimiter by its word or as itself.
     *
     * @throws BadValueException if it is none
     */
    public static Delimiter delimiter(String text) throws BadValueException {
        for (Delimiter delimiter : Delimiter.values()) {
            if (text.equals(delimiter.word()) || text.equals(String.valueOf(delimiter.symbol()))) {
                return delimiter;
            }
        }
        List<String> words =
                Arrays.stream(Delimiter.values()).map(Delimiter::word).toList();
        throw new BadValueException("'" + text.strip() + "' is no delimiter; " + Nearest.hint(text.strip(), words));
    }

    /**
     * The number of a line, 0 for the word none.
     *
     * @throws BadValueException if it is neither
     */
    public static long lineOrNone(String text) throws BadValueException {
        return text.strip().equals(TimeSettings.NONE)
                ? 0
                : ScalarParser.whole(1, MOST_LINES).parse(text);
    }

    /**
     * A unit of time.
     *
     * @throws BadValueException if it is none
     */
    public static ScaledUnit timeUnit(String text) throws BadValueException {
        ScaledUnit unit = unit(text);
        if (unit.unit().dimension() != Dimension.TIME) {
            throw new BadValueException("'" + text.strip() + "' is no unit of time; write for example ms");
        }
        return unit;
    }

    /**
     * A unit.
     *
     * @throws BadValueException if it is none
     */
    public static ScaledUnit unit(String text) throws BadValueException {
        return ScaledUnit.parse(text)
                .orElseThrow(
                        () -> new BadValueException("'" + text.strip() + "' is no known unit; write for example mV"));
    }

    private static double scale(String text) throws BadValueException {
        double scale = ScalarParser.number().parse(text);
        if (scale == 0) {
            throw new BadValueException("a factor of 0 leaves nothing to measure");
        }
        return scale;
    }

    private static OptionalLong line(Optional<Long> line) {
        return line.map(OptionalLong::of).orElse(OptionalLong.empty());
    }

    private static OptionalDouble toOptional(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }
}
