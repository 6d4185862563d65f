// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A column of an Arrow file that is read.
 *
 * @param name its heading
 * @param number how its values are numbers; empty if they are none
 * @param kind what they are, in words, for messages
 * @param secondsPerUnit length of its unit if its type is one of time
 * @param absolute whether its type is a point in time since 1970
 * @param buffers how many buffers of a batch it has
 * @param view whether a batch says how many more there are
 * @param metadata what else is known of it
 */
record ArrowColumn(
        String name,
        Optional<NumberType> number,
        String kind,
        OptionalDouble secondsPerUnit,
        boolean absolute,
        int buffers,
        boolean view,
        Map<String, String> metadata) {

    /** A column of plain numbers. */
    static ArrowColumn numbers(String name, NumberType type, Map<String, String> metadata) {
        return new ArrowColumn(name, Optional.of(type), "numbers", OptionalDouble.empty(), false, 2, false, metadata);
    }

    /** A column of time in a unit. */
    static ArrowColumn time(
            String name, NumberType type, double secondsPerUnit, boolean absolute, Map<String, String> metadata) {
        return new ArrowColumn(
                name, Optional.of(type), "time", OptionalDouble.of(secondsPerUnit), absolute, 2, false, metadata);
    }

    /** A column that is not read. */
    static ArrowColumn other(String name, String kind, int buffers, boolean view, Map<String, String> metadata) {
        return new ArrowColumn(name, Optional.empty(), kind, OptionalDouble.empty(), false, buffers, view, metadata);
    }
}
