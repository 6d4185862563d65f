// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A column of an Arrow file that is written.
 *
 * @param name its heading
 * @param type what its values are
 * @param metadata what else is known of it, by name
 */
public record ArrowField(String name, Type type, Map<String, String> metadata) {

    /** What the values of a column are. No column has missing values. */
    public enum Type {
        /** Whole numbers of 16 bits. */
        INT16(1),
        /** Whole numbers of 64 bits. */
        INT64(1),
        /** Numbers in single precision. */
        FLOAT32(1),
        /** Numbers in double precision. */
        FLOAT64(1),
        /** Text: one more offset of 32 bits than rows, then the texts in UTF-8. */
        TEXT(2),
        /** True or false: a bit each, the lowest of a byte first. */
        BOOL(1);

        private final int buffers;

        Type(int buffers) {
            this.buffers = buffers;
        }

        /** How many buffers of a batch hold its values. */
        public int buffers() {
            return buffers;
        }
    }

    /** Copies the metadata. */
    public ArrowField {
        metadata = Collections.unmodifiableMap(new LinkedHashMap<>(metadata));
    }

    /** A column of which nothing else is known. */
    public static ArrowField of(String name, Type type) {
        return new ArrowField(name, type, Map.of());
    }
}
