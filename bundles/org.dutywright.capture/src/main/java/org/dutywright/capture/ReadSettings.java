// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What the user says about a file where the file does not say it, or says it wrong.
 *
 * @param sampleRateHz samples a second; overrides a time column only where there is none
 * @param channels picked columns and their new names, in order: heading, or {@code #1} for the first value
 *     column; empty takes all
 * @param scales factor for each channel, by its (new) name
 */
public record ReadSettings(OptionalDouble sampleRateHz, List<Pick> channels, Map<String, Double> scales) {

    /**
     * One picked column.
     *
     * @param column heading of the column, or {@code #1} for the first value column
     * @param name name that the channel gets
     */
    public record Pick(String column, String name) {}

    /** Copies its arguments. */
    public ReadSettings {
        channels = List.copyOf(channels);
        scales = Map.copyOf(new LinkedHashMap<>(scales));
    }

    /** Nothing said. */
    public static ReadSettings none() {
        return new ReadSettings(OptionalDouble.empty(), List.of(), Map.of());
    }
}
