// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/** Looks at the events of a text before any node is made, since nodes are made by recursion. */
final class TextLimits {
    private static final int MAX_DEPTH = 30;
    private static final int MAX_EVENTS = 200_000;
    // what reads the values may take time that grows with the square of their length
    private static final int MAX_VALUE_CHARACTERS = 4_000;

    private final LoadSettings settings;
    private final Problems problems;

    TextLimits(LoadSettings settings, Problems problems) {
        this.settings = settings;
        this.problems = problems;
    }

    /** Adds at most one problem. */
    void check(String text) throws MarkedYamlEngineException {
        int depth = 0;
        int events = 0;
        for (Event event : new Parse(settings).parseString(text)) {
            events++;
            depth += step(event);
            String problem = problemOf(event, depth, events);
            if (!problem.isEmpty()) {
                problems.add(event.getStartMark().map(TextTree::mark).orElse(new Mark(1, 1)), problem);
                return;
            }
        }
    }

    private static int step(Event event) {
        return switch (event.getEventId()) {
            case MappingStart, SequenceStart -> 1;
            case MappingEnd, SequenceEnd -> -1;
            default -> 0;
        };
    }

    private static String problemOf(Event event, int depth, int events) {
        if (event.getEventId() == Event.ID.Alias) {
            return "a reference to another place is not read; write the value out";
        }
        if (event instanceof ScalarEvent scalar && scalar.getValue().length() > MAX_VALUE_CHARACTERS) {
            return "a single value is longer than " + MAX_VALUE_CHARACTERS + " characters; shorten it";
        }
        if (depth > MAX_DEPTH) {
            return "nested deeper than " + MAX_DEPTH + " levels";
        }
        return events > MAX_EVENTS ? "more than " + MAX_EVENTS + " entries" : "";
    }
}
