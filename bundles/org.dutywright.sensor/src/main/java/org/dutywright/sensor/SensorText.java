// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import static org.dutywright.sensor.LimitText.toOptionalDouble;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.dutywright.sensor.Sensor.Agreement;
import org.dutywright.sensor.Sensor.Decision;
import org.dutywright.sensor.Sensor.EventRule;
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
        Sensor sensor = read(MapReader.of(root, problems, "a sensor text"));
        problems.throwIfAny();
        return sensor;
    }

    private static Sensor read(MapReader map) {
        map.required("schema", schema());
        Optional<String> id = map.required("id", identifier());
        Sensor sensor = new Sensor(
                id.orElse(""),
                map.optional("title", ScalarParser.text()).or(() -> id).orElse(""),
                map.child("source").map(SensorText::readOrigin).orElse(new Origin("", "", "")),
                map.child("quantity").map(SensorText::readQuantity).orElse(new Quantity("position", "%", 0, 100)),
                LimitText.range(map, "supply", Dimension.VOLTAGE),
                readChannels(map),
                map.child("agreement").flatMap(SensorText::readAgreement),
                map.child("events").map(SensorText::readEvents).orElse(Map.of()),
                map.child("decision").map(SensorText::readDecision).orElse(new Decision(Decision.Rule.THREE_WAY, 2)));
        checkAgreement(map, sensor);
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

    static ScalarParser<String> identifier() {
        return text -> {
            if (!text.matches("[A-Za-z0-9][A-Za-z0-9.-]*")) {
                throw new BadValueException("'" + text + "' may have letters, digits, dots and dashes only");
            }
            return text;
        };
    }

    private static Origin readOrigin(MapReader map) {
        Origin origin = new Origin(
                map.required("document", ScalarParser.text()).orElse(""),
                map.optional("revision", ScalarParser.text()).orElse(""),
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
        Quantity quantity = new Quantity(
                map.optional("name", ScalarParser.text()).orElse("position"),
                map.optional("unit", ScalarParser.text()).orElse("%"),
                map.required("released", ScalarParser.number()).orElse(0.0),
                map.required("pressed", ScalarParser.number()).orElse(100.0));
        map.finish();
        if (quantity.released() == quantity.pressed()) {
            map.problemAt("pressed", "'released' and 'pressed' are equal");
        }
        return quantity;
    }

    private static List<SensorChannel> readChannels(MapReader map) {
        if (!map.has("channels")) {
            map.problemAt("channels", "a sensor text needs the key 'channels'");
        }
        List<MapReader> maps = map.children("channels", "a channel");
        Set<String> names = new HashSet<>();
        List<SensorChannel> channels = maps.stream()
                .map(channelMap -> {
                    SensorChannel channel = ChannelText.read(channelMap);
                    if (!channel.name().isEmpty() && !names.add(channel.name())) {
                        channelMap.problemAt("name", "the channel '" + channel.name() + "' stands here a second time");
                    }
                    return channel;
                })
                .toList();
        if (map.has("channels") && channels.isEmpty()) {
            map.problemAt("channels", "'channels' needs at least one entry");
        }
        return channels;
    }

    private static Optional<Agreement> readAgreement(MapReader map) {
        ScalarParser<Double> share = QuantityScalars.positive(Dimension.SHARE);
        Optional<Double> tolerance = map.required("tolerance", share);
        Optional<Double> moving = map.optional("moving", share);
        Optional<Double> above = map.optional("movingAbove", QuantityScalars.positive(Dimension.SHARE_RATE));
        Optional<Double> confirmation = map.required("confirmation", QuantityScalars.notNegative(Dimension.TIME));
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

    private static void checkAgreement(MapReader map, Sensor sensor) {
        if (!map.has("agreement")) {
            return;
        }
        long withDuty = sensor.channels().stream()
                .filter(channel -> channel.duty().isPresent())
                .count();
        if (withDuty < 2) {
            map.problemAt("agreement", "'agreement' needs two channels with the end points of their duty");
        }
    }

    private static Map<String, EventRule> readEvents(MapReader map) {
        Map<String, EventRule> rules = new LinkedHashMap<>();
        for (String kind : JUDGED_EVENTS) {
            map.node(kind).ifPresent(node -> rules.put(kind, readEventRule(map, kind, node)));
        }
        map.finish();
        return rules;
    }

    private static EventRule readEventRule(MapReader map, String kind, TextNode node) {
        if (node instanceof TextNode.ScalarNode) {
            map.optional(kind, ScalarParser.word(List.of("ignore")));
            return new EventRule(OptionalLong.empty());
        }
        Optional<MapReader> child = map.child(kind);
        Optional<Long> max = child.flatMap(rule -> rule.required("max", ScalarParser.whole(0, 1_000_000_000)));
        child.ifPresent(MapReader::finish);
        return new EventRule(max.isPresent() ? OptionalLong.of(max.get()) : OptionalLong.empty());
    }

    private static Decision readDecision(MapReader map) {
        Decision.Rule rule = map.optional("rule", decisionRule()).orElse(Decision.Rule.THREE_WAY);
        double coverage = map.optional("coverage", ScalarParser.number()).orElse(2.0);
        map.finish();
        if (!(coverage > 0)) {
            map.problemAt("coverage", "'coverage' must be above 0; write for example 2");
        }
        return new Decision(rule, coverage);
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
