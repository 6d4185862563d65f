// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.dutywright.text.TextNode.Entry;
import org.dutywright.text.TextNode.ListNode;
import org.dutywright.text.TextNode.MapNode;
import org.dutywright.text.TextNode.ScalarNode;

/**
 * Reads the keys of one map and reports every problem instead of stopping at the first. Ask for each key once; then
 * {@link #finish} reports the keys that nobody asked for, each with the nearest known one.
 *
 * <pre>{@code
 * MapReader map = MapReader.of(root, problems, "a sensor");
 * Optional<String> id = map.required("id", ScalarParser.text());
 * map.child("quantity").ifPresent(this::readQuantity);
 * map.finish();
 * }</pre>
 */
public final class MapReader {
    private final MapNode map;
    private final Problems problems;
    private final String what;
    private final Set<String> asked = new LinkedHashSet<>();

    private MapReader(MapNode map, Problems problems, String what) {
        this.map = map;
        this.problems = problems;
        this.what = what;
    }

    /**
     * Starts reading a node that should be a map; reports it if it is not.
     *
     * @param what the thing that the map describes, with its article, for messages
     */
    public static MapReader of(TextNode node, Problems problems, String what) {
        return of(node, problems, what, "");
    }

    private static MapReader of(TextNode node, Problems problems, String what, String example) {
        if (node instanceof MapNode map) {
            return new MapReader(map, problems, what);
        }
        String advice = example.isEmpty() ? "" : ", for example " + example;
        problems.add(node.mark(), what + " needs keys with values" + advice + ", but this is " + node.kind());
        // what is no map at all has been reported: its missing keys are no news
        return new MapReader(new MapNode(node.mark(), Map.of()), new Problems(""), what);
    }

    /** Where the map begins. */
    public Mark mark() {
        return map.mark();
    }

    /** Where a key stands, or the map if it is absent. */
    public Mark markOf(String key) {
        Entry entry = map.entries().get(key);
        return entry == null ? map.mark() : entry.keyMark();
    }

    /** Where the value of a key stands, or the map if it is absent. */
    public Mark markOfValue(String key) {
        Entry entry = map.entries().get(key);
        return entry == null ? map.mark() : entry.value().mark();
    }

    /** The keys that are there, in order. */
    public Set<String> keys() {
        return map.entries().keySet();
    }

    /** Whether a key is there. */
    public boolean has(String key) {
        return map.entries().containsKey(key);
    }

    /** The value of a key that must be there; absent or wrong is reported. */
    public <T> Optional<T> required(String key, ScalarParser<T> parser) {
        return required(key, parser, "");
    }

    /**
     * The value of a key that must be there; absent or wrong is reported.
     *
     * @param example a value as one writes it, for the message about an absent key; may be empty
     */
    public <T> Optional<T> required(String key, ScalarParser<T> parser, String example) {
        if (!has(key)) {
            asked.add(key);
            String advice = example.isEmpty() ? "" : "; write for example " + key + ": " + example;
            problems.add(map.mark(), what + " needs the key '" + key + "'" + advice);
            return Optional.empty();
        }
        return optional(key, parser);
    }

    /** The value of a key that may be absent; wrong is reported and then empty. */
    public <T> Optional<T> optional(String key, ScalarParser<T> parser) {
        asked.add(key);
        Entry entry = map.entries().get(key);
        return entry == null ? Optional.empty() : scalar(entry.value(), "'" + key + "'", parser);
    }

    /** The map below a key that may be absent. */
    public Optional<MapReader> child(String key) {
        return child(key, "");
    }

    /**
     * The map below a key that may be absent.
     *
     * @param example a map as one writes it, for the message about a value that is none; may be empty
     */
    public Optional<MapReader> child(String key, String example) {
        asked.add(key);
        Entry entry = map.entries().get(key);
        return entry == null ? Optional.empty() : Optional.of(of(entry.value(), problems, "'" + key + "'", example));
    }

    /** The node below a key that may be absent, for values that may have several forms. */
    public Optional<TextNode> node(String key) {
        asked.add(key);
        return Optional.ofNullable(map.entries().get(key)).map(Entry::value);
    }

    /** The maps in the list below a key, empty if it is absent. */
    public List<MapReader> children(String key, String whatEachIs) {
        List<MapReader> readers = new ArrayList<>();
        items(key).forEach(item -> readers.add(of(item, problems, whatEachIs)));
        return readers;
    }

    /** The single values in the list below a key; one value alone counts as a list of one. */
    public <T> List<T> scalars(String key, ScalarParser<T> parser) {
        List<T> values = new ArrayList<>();
        Entry entry = map.entries().get(key);
        if (entry != null && entry.value() instanceof ScalarNode) {
            optional(key, parser).ifPresent(values::add);
            return values;
        }
        items(key)
                .forEach(item ->
                        scalar(item, "an entry of '" + key + "'", parser).ifPresent(values::add));
        return values;
    }

    private List<TextNode> items(String key) {
        asked.add(key);
        Entry entry = map.entries().get(key);
        if (entry == null) {
            return List.of();
        }
        if (entry.value() instanceof ListNode list) {
            return list.items();
        }
        problems.add(
                entry.value().mark(),
                "'" + key + "' needs a list, each entry after a dash, but this is "
                        + entry.value().kind());
        return List.of();
    }

    private <T> Optional<T> scalar(TextNode node, String name, ScalarParser<T> parser) {
        if (!(node instanceof ScalarNode scalar)) {
            problems.add(node.mark(), name + " needs a single value, but this is " + node.kind());
            return Optional.empty();
        }
        try {
            return Optional.of(parser.parse(scalar.text()));
        } catch (BadValueException e) {
            // parsers quote the text that they refuse, which may fill the screen
            String text = scalar.text().strip();
            problems.add(node.mark(), name + ": " + e.getMessage().replace(text, Visible.shortened(text)));
            return Optional.empty();
        }
    }

    /** Reports a problem at a key, or at the map if the key is absent. */
    public void problemAt(String key, String message) {
        problems.add(markOf(key), message);
    }

    /** Reports every key that nobody asked for. */
    public void finish() {
        map.entries().forEach((key, entry) -> {
            if (!asked.contains(key)) {
                problems.add(
                        entry.keyMark(),
                        "unknown key '" + Visible.shortened(key) + "' in " + what + "; " + Nearest.hint(key, asked));
            }
        });
    }
}
