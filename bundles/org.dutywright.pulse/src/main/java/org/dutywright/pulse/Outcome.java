// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/** What a measurement found: numbers, or why there are none. */
public sealed interface Outcome {
    /** A quantity that each cycle has. */
    record OfCycles(Statistic statistic) implements Outcome {}

    /** A single value. */
    record Single(Uncertain value) implements Outcome {}

    /**
     * No number.
     *
     * @param reason why, a sentence without a full stop
     */
    record Absent(String reason) implements Outcome {}
}
