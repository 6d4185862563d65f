// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A {@code NAME=VALUE} of the command line. The last equals sign counts, for a column's heading may hold one. */
record Assignment(String name, String value) {
    /**
     * Reads one.
     *
     * @param option that it was given to
     * @param form what it should look like, for the message
     */
    static Assignment parse(String option, String form, String text) {
        int at = text.lastIndexOf('=');
        if (at <= 0 || at == text.length() - 1) {
            throw CommandFailure.usage(option + " " + text + ": write it as " + form);
        }
        return new Assignment(
                text.substring(0, at).strip(), text.substring(at + 1).strip());
    }

    /** Reads several whose names all differ, in order. */
    static Map<String, String> parseAll(String option, String form, List<String> texts) {
        Map<String, String> values = new LinkedHashMap<>();
        for (String text : texts) {
            Assignment assignment = parse(option, form, text);
            if (values.put(assignment.name(), assignment.value()) != null) {
                throw CommandFailure.usage(option + ": " + assignment.name() + " is given twice");
            }
        }
        return values;
    }
}
