// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.diagnosis.internal.lines.LineJudge.Limits;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.StateLevels;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.Limit;
import org.dutywright.sensor.Sensor.Range;
import org.dutywright.sensor.Sensor.SensorChannel;

/**
 * Whether the levels of a channel would fit the sensor text if they were scaled by the factor of a usual probe: then the
 * factor of the probe and that of the instrument may not have been the same. The factor is named, never applied: levels a
 * tenth of what they should be may as well be a fault.
 */
final class ProbeFactor {
    private static final String VOLT = "V";
    private static final int[] FACTORS = {10, 20, 100};
    /** Where the text limits a level on one side only, the scaled level lies within this factor of the limit. */
    private static final double NEAR = 4;

    private final double low;
    private final double high;
    private final Limits lowLimits;
    private final Limits highLimits;

    private ProbeFactor(StateLevels levels, Limits lowLimits, Limits highLimits) {
        low = levels.low().value();
        high = levels.high().value();
        this.lowLimits = lowLimits;
        this.highLimits = highLimits;
    }

    /** A line that names the factor, empty if the levels fit as they are or no factor makes them fit. */
    static Optional<Fitness> line(
            ChannelMeasurement measured, SensorChannel channel, Sensor sensor, SupplyVoltage supply) {
        if (measured.levels().isEmpty()
                || channel.highLevel().isEmpty()
                || !measured.channel().unit().equals(VOLT)) {
            return Optional.empty();
        }
        ProbeFactor probe = new ProbeFactor(
                measured.levels().get(),
                limits(channel.lowLevel(), sensor, supply),
                limits(channel.highLevel(), sensor, supply));
        List<String> scales = probe.fitting();
        if (scales.isEmpty()) {
            return Optional.empty();
        }
        String name = measured.channel().name();
        List<String> options =
                scales.stream().map(it -> "--scale " + name + "=" + it).toList();
        return Optional.of(new Fitness(
                name + ".probeFactor",
                Grade.POOR,
                "the high level of " + Say.amount(probe.high, VOLT) + " is " + probe.expected()
                        + ", as if probe and instrument had different factors; if so, set them alike or give "
                        + String.join(" or ", options)));
    }

    private List<String> fitting() {
        List<String> scales = new ArrayList<>();
        for (int factor : FACTORS) {
            if (highLimits.lower().isPresent() && high < highLimits.lower().getAsDouble() && fits(factor)) {
                scales.add(Integer.toString(factor));
            }
            if (highLimits.upper().isPresent() && high > highLimits.upper().getAsDouble() && fits(1.0 / factor)) {
                scales.add(String.format(Locale.ROOT, "%.3g", 1.0 / factor));
            }
        }
        return scales;
    }

    private boolean fits(double scale) {
        double lower = highLimits.lower().orElseGet(() -> highLimits.upper().getAsDouble() / NEAR);
        double upper = highLimits.upper().orElseGet(() -> highLimits.lower().getAsDouble() * NEAR);
        return scale * high >= lower
                && scale * high <= upper
                && scale * low <= lowLimits.upper().orElse(Double.POSITIVE_INFINITY)
                && scale * low >= lowLimits.lower().orElse(Double.NEGATIVE_INFINITY);
    }

    private String expected() {
        return highLimits.lower().isPresent() && high < highLimits.lower().getAsDouble()
                ? "far below the " + Say.amount(highLimits.lower().getAsDouble(), VOLT) + " of the sensor text"
                : "far above the " + Say.amount(highLimits.upper().getAsDouble(), VOLT) + " of the sensor text";
    }

    private static Limits limits(Optional<Range> range, Sensor sensor, SupplyVoltage supply) {
        OptionalDouble least = supply.volts().isPresent()
                ? supply.volts()
                : volts(sensor.supply().flatMap(Range::min));
        OptionalDouble most = supply.volts().isPresent()
                ? supply.volts()
                : volts(sensor.supply().flatMap(Range::max));
        return new Limits(resolved(range.flatMap(Range::min), least), resolved(range.flatMap(Range::max), most), "");
    }

    private static OptionalDouble volts(Optional<Limit> limit) {
        return limit.isPresent() && !limit.get().percentOfSupply()
                ? OptionalDouble.of(limit.get().value())
                : OptionalDouble.empty();
    }

    private static OptionalDouble resolved(Optional<Limit> limit, OptionalDouble supplyVolts) {
        return limit.isPresent() ? limit.get().resolve(supplyVolts) : OptionalDouble.empty();
    }
}
