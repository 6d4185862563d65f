// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.util.Optional;
import org.dutywright.capture.CountScale;

/**
 * How a channel lies in a store.
 *
 * @param type INT16, FLOAT32 or FLOAT64
 * @param counts what its counts stand for, if it has type INT16
 */
record ColumnForm(ArrowField.Type type, Optional<CountScale> counts) {
    static ColumnForm of(ArrowField.Type type) {
        return new ColumnForm(type, Optional.empty());
    }

    static ColumnForm counts(CountScale scale) {
        return new ColumnForm(ArrowField.Type.INT16, Optional.of(scale));
    }

    /** Bytes of one value. */
    int bytes() {
        return switch (type) {
            case INT16 -> Short.BYTES;
            case FLOAT32 -> Float.BYTES;
            case FLOAT64 -> Double.BYTES;
            default -> throw new IllegalStateException("no form of a channel: " + type);
        };
    }
}
