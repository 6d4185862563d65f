// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A node of a parsed text: a map, a list or a single value, each with its place in the file. */
public sealed interface TextNode {
    /** Where it begins. */
    Mark mark();

    /** What it is, for messages. */
    String kind();

    /**
     * Keys and their values, in the order of the file.
     *
     * @param mark where the first key stands
     * @param entries by key
     */
    record MapNode(Mark mark, Map<String, Entry> entries) implements TextNode {
        /** Copies the entries, keeping their order. */
        public MapNode {
            entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
        }

        @Override
        public String kind() {
            return "a map of keys";
        }
    }

    /**
     * One key of a map with its value.
     *
     * @param keyMark where the key stands
     * @param value the value
     */
    record Entry(Mark keyMark, TextNode value) {}

    /**
     * Values in order.
     *
     * @param mark where the list begins
     * @param items its values
     */
    record ListNode(Mark mark, List<TextNode> items) implements TextNode {
        /** Copies the items. */
        public ListNode {
            items = List.copyOf(items);
        }

        @Override
        public String kind() {
            return "a list";
        }
    }

    /**
     * A single value as it is written, without quotes.
     *
     * @param mark where it begins
     * @param text the value
     */
    record ScalarNode(Mark mark, String text) implements TextNode {
        @Override
        public String kind() {
            return text.isEmpty() ? "empty" : "the single value '" + Visible.shortened(text) + "'";
        }
    }
}
