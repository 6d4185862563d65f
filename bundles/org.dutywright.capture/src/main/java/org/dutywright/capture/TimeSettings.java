// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.util.Optional;
import org.dutywright.units.ScaledUnit;

/**
 * Which column holds the time stamps and what they count, as far as the user says it.
 *
 * @param column its heading, or {@code #1} for the first column of the file; {@value #NONE} if no column does
 * @param unit what a time stamp of 1 is
 */
public record TimeSettings(Optional<String> column, Optional<ScaledUnit> unit) {
    /** Stands for no column, so that the sample rate tells the time. */
    public static final String NONE = "none";

    /** Nothing said. */
    public static TimeSettings none() {
        return new TimeSettings(Optional.empty(), Optional.empty());
    }

    /** Whether nothing is said. */
    public boolean isNone() {
        return equals(none());
    }

    /** Whether the user says that no column holds time. */
    public boolean deniesColumn() {
        return column.isPresent() && column.get().equals(NONE);
    }

    /** What these say, and where they say nothing, what the others say. */
    public TimeSettings orElse(TimeSettings others) {
        return new TimeSettings(column.or(others::column), unit.or(others::unit));
    }
}
