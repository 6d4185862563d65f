// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import static org.dutywright.sensor.LimitText.toOptionalDouble;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.dutywright.sensor.Sensor.Agreement;
import org.dutywright.sensor.Sensor.Decision;
import org.dutywright.sensor.Sensor.Origin;
import org.dutywright.sensor.Sensor.Quantity;
import org.dutywright.sensor.Sensor.SensorChannel;
import org.dutywright.text.BadValueException;
import org.dutywright.text.MapReader;
import org.dutywright.text.Problems;
import org.dutywright.text.ProblemsException;
import org.dutywright.text.ScalarParser;
import org.dutywright.text.TextNode;
import org.dutywright.text.TextTree;
import org.dutywright.units.Dimension;

/** Reads a sensor text, {@code schema: dutywright.sensor/1}; the package description shows one. */
public final class SensorText {
    /** The schema that the first key names. */
    public static final String SCHEMA = "dutywright.sensor/1";

    /** The kinds of events that are judged, with no event allowed, where the text says nothing else. */
    public static final List<String> JUDGED_EVENTS = List.of(
            "missing-pulse", "extra-pulse", "runt", "dropout", "stuck-low", "stuck-high", "level-shift", "bounce");

    /** All kinds of events that a text may name; those that are not judged otherwise are judged where it does. */
    public static final List<String> EVENT_KINDS = Stream.concat(
                    JUDGED_EVENTS.stream(), Stream.of("period-excursion", "duty-jump", "slow-edge"))
            .toList();

    private static final Decision USUAL_DECISION = new Decision(Decision.Rule.THREE_WAY, 2);

    private SensorText() {}

    /**
     * Reads one sensor.
     *
     * @param fileName the file as the user named it, for messages
     * @throws ProblemsException with all problems of the text
     */
    public static Sensor parse(String fileName, String content) throws ProblemsException {
        TextNode root = TextTree.parse(fileName, content);
        Problems problems = new Problems(fileName);
        MapReader map = MapReader.of(root, problems, "a sensor text");
        map.required("schema", schema(), SCHEMA);
        if (isOtherText(map)) {
            problems.throwIfAny();
        }
        Sensor sensor = read(map);
        problems.throwIfAny();
        return sensor;
    }

    // the keys of a scenario, say, are no mistakes of their own
    private static boolean isOtherText(MapReader map) {
        return map.node("schema").orElse(null) instanceof TextNode.ScalarNode schema
                && schema.text().startsWith("dutywright.")
                && !schema.text().startsWith("dutywright.sensor");
    }

    private static Sensor read(MapReader map) {
        Channels channels = readChannels(map);
        Sensor sensor = new Sensor(
                map.required("id", identifier(), "pedal-200").orElse(""),
                map.required("title", ScalarParser.line(), "Pedal position sensor")
                        .orElse(""),
                map.child("source").map(SensorText::readOrigin).orElse(new Origin("", "", "")),
                map.child("quantity").map(SensorText::readQuantity).orElse(new Quantity("position", "%", 0, 100)),
                LimitText.range(map, "supply", Dimension.VOLTAGE),
                channels.list,
                map.child("agreement").flatMap(SensorText::readAgreement),
                map.child("events").map(EventText::read).orElse(Map.of()),
                map.child("decision").map(SensorText::readDecision).orElse(USUAL_DECISION));
        if (map.has("agreement") && channels.withDuty < 2) {
            map.problemAt(
                    "agreement",
                    "'agreement' needs two channels with the end points of their duty;"
                            + " write for example duty: {released: 10 %, pressed: 90 %} for each");
        }
        map.finish();
        return sensor;
    }

    private static ScalarParser<String> schema() {
        return text -> {
            if (!text.equals(SCHEMA)) {
                throw new BadValueException("'" + text + "' is not a schema that this version reads; write " + SCHEMA);
            }
            return text;
        };
    }

    private static ScalarParser<String> identifier() {
        return text -> {
            if (!text.matches("[A-Za-z0-9][A-Za-z0-9.-]*")) {
                throw new BadValueException("'" + text + "' is no id; it begins with a letter or digit and"
                        + " has letters, digits, dots and dashes only");
            }
            return text;
        };
    }

    private static Origin readOrigin(MapReader map) {
        Origin origin = new Origin(
                map.required("document", ScalarParser.line(), "\"Data sheet 12, page 3\"")
                        .orElse(""),
                map.optional("revision", ScalarParser.line()).orElse(""),
                map.optional("date", date()).orElse(""));
        map.finish();
        return origin;
    }

    private static ScalarParser<String> date() {
        return text -> {
            try {
                return LocalDate.parse(text).toString();
            } catch (DateTimeParseException e) {
                throw new BadValueException("'" + text + "' is not a date; write for example 2026-11-25");
            }
        };
    }

    private static Quantity readQuantity(MapReader map) {
        Optional<Double> released = map.required("released", ScalarParser.number(), "0");
        Optional<Double> pressed = map.required("pressed", ScalarParser.number(), "100");
        Quantity quantity = new Quantity(
                map.optional("name", ScalarParser.line()).orElse("position"),
                map.optional("unit", ScalarParser.line()).orElse("%"),
                released.orElse(0.0),
                pressed.orElse(100.0));
        map.finish();
        if (released.isPresent() && released.equals(pressed)) {
            map.problemAt("pressed", "'released' and 'pressed' are equal; write the values at the two ends of travel");
        }
        return quantity;
    }

    /** @param withDuty how many have the key {@code duty}, readable or not */
    private record Channels(List<SensorChannel> list, long withDuty) {}

    private static Channels readChannels(MapReader map) {
        if (!map.has("channels")) {
            map.problemAt("channels", "a sensor text needs the key 'channels' with a list, each entry after a dash");
        }
        if (map.node("channels").orElse(null) instanceof TextNode.ListNode list
                && list.items().isEmpty()) {
            map.problemAt("channels", "'channels' needs at least one entry; write for example - name: signal1");
        }
        List<MapReader> maps = map.children("channels", "a channel");
        Map<String, Integer> lines = new HashMap<>();
        List<SensorChannel> channels = new ArrayList<>();
        for (MapReader channelMap : maps) {
            SensorChannel channel = ChannelText.read(channelMap);
            channels.add(channel);
            int line = channelMap.markOf("name").line();
            Integer before = channel.name().isEmpty() ? null : lines.putIfAbsent(channel.name(), line);
            if (before != null) {
                channelMap.problemAt(
                        "name",
                        "the channel '" + channel.name() + "' stands here a second time; the first is in line " + before
                                + ", give this one another name");
            }
        }
        return new Channels(
                channels, maps.stream().filter(channel -> channel.has("duty")).count());
    }

    private static Optional<Agreement> readAgreement(MapReader map) {
        ScalarParser<Double> share = QuantityScalars.positive(Dimension.SHARE);
        Optional<Double> tolerance = map.required("tolerance", share, "4 %");
        Optional<Double> moving = map.optional("moving", share);
        Optional<Double> above = map.optional("movingAbove", QuantityScalars.positive(Dimension.SHARE_RATE));
        Optional<Double> confirmation =
                map.required("confirmation", QuantityScalars.notNegative(Dimension.TIME), "200 ms");
        map.finish();
        if (map.has("moving") != map.has("movingAbove")) {
            map.problemAt(
                    map.has("moving") ? "moving" : "movingAbove",
                    "'moving' and 'movingAbove' go together; write for example moving: 8 %, movingAbove: 50 %/s");
        }
        if (tolerance.isEmpty() || confirmation.isEmpty()) {
            return Optional.empty();
        }
        if (moving.isPresent() && moving.get() < tolerance.get()) {
            map.problemAt(
                    "moving", "'moving' is below 'tolerance'; a moving sensor can't be held to less than at rest");
        }
        return Optional.of(
                new Agreement(tolerance.get(), toOptionalDouble(moving), toOptionalDouble(above), confirmation.get()));
    }

    private static Decision readDecision(MapReader map) {
        Decision.Rule rule = map.optional("rule", decisionRule()).orElse(USUAL_DECISION.rule());
        double coverage = map.optional("coverage", coverage()).orElse(USUAL_DECISION.coverage());
        map.finish();
        return new Decision(rule, coverage);
    }

    private static ScalarParser<Double> coverage() {
        return text -> {
            double coverage = ScalarParser.number().parse(text);
            if (coverage <= 0) {
                throw new BadValueException("'" + text.strip() + "' must be above 0; write for example 2");
            }
            return coverage;
        };
    }

    private static ScalarParser<Decision.Rule> decisionRule() {
        Map<String, Decision.Rule> rules = new LinkedHashMap<>();
        for (Decision.Rule rule : Decision.Rule.values()) {
            rules.put(rule.word(), rule);
        }
        ScalarParser<String> word = ScalarParser.word(List.copyOf(rules.keySet()));
        return text -> rules.get(word.parse(text));
    }
}
