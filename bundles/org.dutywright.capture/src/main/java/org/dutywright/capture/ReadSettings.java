// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.units.ScaledUnit;

/**
 * What the user says about a file where the file does not say it, or says it wrong.
 *
 * @param format id of the reader that is to read it; else the one that finds it likeliest to be its own
 * @param sampleRateHz samples a second; overrides a time column only where there is none
 * @param channels picked columns and their new names, in order: heading, or {@code #1} for the first value
 *     column; empty takes all
 * @param scales factor for each channel, by its (new) name
 * @param units what a 1 in the file is, by the (new) name of a channel; else what the file says
 * @param fullScaleVolts volts of full scale, of files that hold shares of it
 * @param time which column holds the time stamps
 * @param table layout of a text table
 */
public record ReadSettings(
        Optional<String> format,
        OptionalDouble sampleRateHz,
        List<Pick> channels,
        Map<String, Double> scales,
        Map<String, ScaledUnit> units,
        OptionalDouble fullScaleVolts,
        TimeSettings time,
        TableSettings table) {

    /** Parts of the settings that not every format has a use for. */
    public enum Part {
        /** {@link ReadSettings#time()}. */
        TIME("a time column"),
        /** {@link ReadSettings#table()}. */
        TABLE("encoding, delimiter, decimal mark and lines"),
        /** {@link ReadSettings#fullScaleVolts()}. */
        FULL_SCALE("volts of full scale");

        private final String word;

        Part(String word) {
            this.word = word;
        }

        /** What it says, for messages. */
        public String word() {
            return word;
        }
    }

    /**
     * One picked column.
     *
     * @param column heading of the column, or {@code #1} for the first value column
     * @param name name that the channel gets
     */
    public record Pick(String column, String name) {}

    /** Copies its arguments, keeping the order. */
    public ReadSettings {
        channels = List.copyOf(channels);
        scales = Collections.unmodifiableMap(new LinkedHashMap<>(scales));
        units = Collections.unmodifiableMap(new LinkedHashMap<>(units));
    }

    /** A sample rate, picks and scales. */
    public ReadSettings(OptionalDouble sampleRateHz, List<Pick> channels, Map<String, Double> scales) {
        this(
                Optional.empty(),
                sampleRateHz,
                channels,
                scales,
                Map.of(),
                OptionalDouble.empty(),
                TimeSettings.none(),
                TableSettings.none());
    }

    /** Nothing said. */
    public static ReadSettings none() {
        return new ReadSettings(OptionalDouble.empty(), List.of(), Map.of());
    }

    /** The same with another format. */
    public ReadSettings withFormat(Optional<String> other) {
        return new ReadSettings(other, sampleRateHz, channels, scales, units, fullScaleVolts, time, table);
    }

    /** The same with another sample rate. */
    public ReadSettings withSampleRate(OptionalDouble hertz) {
        return new ReadSettings(format, hertz, channels, scales, units, fullScaleVolts, time, table);
    }

    /** The same with other channels. */
    public ReadSettings withChannels(
            List<Pick> picks, Map<String, Double> otherScales, Map<String, ScaledUnit> otherUnits) {
        return new ReadSettings(format, sampleRateHz, picks, otherScales, otherUnits, fullScaleVolts, time, table);
    }

    /** The same with another full scale. */
    public ReadSettings withFullScale(OptionalDouble volts) {
        return new ReadSettings(format, sampleRateHz, channels, scales, units, volts, time, table);
    }

    /** The same with another time column. */
    public ReadSettings withTime(TimeSettings other) {
        return new ReadSettings(format, sampleRateHz, channels, scales, units, fullScaleVolts, other, table);
    }

    /** The same with another layout. */
    public ReadSettings withTable(TableSettings other) {
        return new ReadSettings(format, sampleRateHz, channels, scales, units, fullScaleVolts, time, other);
    }

    /** Whether anything is said in a part. */
    public boolean says(Part part) {
        return switch (part) {
            case TIME -> !time.isNone();
            case TABLE -> !table.isNone();
            case FULL_SCALE -> fullScaleVolts.isPresent();
        };
    }
}
