// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.dutywright.sensor.Sensor.EventRule;
import org.dutywright.text.BadValueException;
import org.dutywright.text.MapReader;
import org.dutywright.text.ScalarParser;
import org.dutywright.text.TextNode;

/** Reads {@code events}: how many of a kind are allowed. */
final class EventText {
    private static final String ADVICE = "write ignore or for example {max: 3}";
    private static final long MAX_COUNT = 1_000_000_000;

    private EventText() {}

    static Map<String, EventRule> read(MapReader map) {
        Map<String, EventRule> rules = new LinkedHashMap<>();
        for (String kind : SensorText.EVENT_KINDS) {
            Optional<TextNode> node = map.node(kind);
            if (node.isPresent()) {
                rules.put(kind, readRule(map, kind, node.get()));
            }
        }
        map.finish();
        return rules;
    }

    private static EventRule readRule(MapReader map, String kind, TextNode node) {
        if (node instanceof TextNode.ScalarNode) {
            map.optional(kind, ignore());
            return new EventRule(OptionalLong.empty());
        }
        Optional<MapReader> child = map.child(kind, "{max: 3}");
        Optional<Long> max = child.flatMap(rule -> rule.required("max", ScalarParser.whole(0, MAX_COUNT), "0"));
        child.ifPresent(MapReader::finish);
        return new EventRule(max.isPresent() ? OptionalLong.of(max.get()) : OptionalLong.empty());
    }

    private static ScalarParser<String> ignore() {
        return text -> {
            if (!text.strip().equals("ignore")) {
                throw new BadValueException("'" + text.strip() + "' is no rule for events; " + ADVICE);
            }
            return text.strip();
        };
    }
}
