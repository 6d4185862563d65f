// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * One sensor of the catalogue, as its text states it. Every limit is optional; what is absent is not judged.
 * Numbers are in base units: hertz, volts, seconds; duty and travel in percent.
 */
public record Sensor(
        String id,
        String title,
        Origin origin,
        Quantity quantity,
        Optional<Range> supply,
        List<SensorChannel> channels,
        Optional<Agreement> agreement,
        Map<String, EventRule> events,
        Decision decision) {

    /** Copies the channels and the rules, keeping their order. */
    public Sensor {
        channels = List.copyOf(channels);
        events = Collections.unmodifiableMap(new LinkedHashMap<>(events));
    }

    /** Where the numbers come from. */
    public record Origin(String document, String revision, String date) {}

    /** What the sensor reports: its value at the two ends of travel, in {@code unit}. */
    public record Quantity(String name, String unit, double released, double pressed) {}

    /** A limit value, absolute in base units or as a percentage of the supply voltage. */
    public record Limit(double value, boolean percentOfSupply) {
        /**
         * The value in base units.
         *
         * @param supplyVolts the supply, empty if it is not known
         * @return empty if it depends on an unknown supply
         */
        public OptionalDouble resolve(OptionalDouble supplyVolts) {
            if (!percentOfSupply) {
                return OptionalDouble.of(value);
            }
            return supplyVolts.isPresent()
                    ? OptionalDouble.of(value / 100 * supplyVolts.getAsDouble())
                    : OptionalDouble.empty();
        }
    }

    /** Lower and upper limit, at least one of them present. */
    public record Range(Optional<Limit> min, Optional<Limit> max) {}

    /** Thresholds of the module's input in volts. */
    public record Input(double risingVolts, double fallingVolts) {}

    /** The duty of a channel: its end points, their tolerance, and the band of valid duties, in percent. */
    public record Duty(
            double releasedPercent,
            double pressedPercent,
            OptionalDouble tolerancePercent,
            OptionalDouble validMinPercent,
            OptionalDouble validMaxPercent) {}

    /** One channel. */
    public record SensorChannel(
            String name,
            boolean activeHigh,
            Optional<Range> frequency,
            Optional<Range> lowLevel,
            Optional<Range> highLevel,
            Optional<Input> input,
            Optional<Duty> duty,
            OptionalDouble transitionMaxSeconds) {}

    /**
     * How far the channels may lie apart, in percent of travel.
     *
     * @param tolerancePercent at rest
     * @param movingPercent while the travel changes faster than {@code movingAbovePercentPerSecond}
     * @param confirmationSeconds how long they may be apart before a module logs a fault
     */
    public record Agreement(
            double tolerancePercent,
            OptionalDouble movingPercent,
            OptionalDouble movingAbovePercentPerSecond,
            double confirmationSeconds) {}

    /** How many events of a kind are allowed; empty: the kind is not judged. */
    public record EventRule(OptionalLong max) {}

    /** How conformity is decided. */
    public record Decision(Rule rule, double coverage) {
        /** The decision rule, JCGM 106. */
        public enum Rule {
            SIMPLE("simple"),
            GUARDED_ACCEPTANCE("guarded-acceptance"),
            THREE_WAY("three-way");

            private final String word;

            Rule(String word) {
                this.word = word;
            }

            /** The word used in the text. */
            public String word() {
                return word;
            }
        }
    }
}
