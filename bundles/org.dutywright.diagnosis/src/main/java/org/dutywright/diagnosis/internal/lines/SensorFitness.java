// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.diagnosis.ChannelMatch;
import org.dutywright.diagnosis.CheckSettings;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.Limit;
import org.dutywright.sensor.Sensor.SensorChannel;

/** What only the sensor text tells of a recording: whether its rate can carry the carrier, and whether its levels are scaled. */
public final class SensorFitness {
    private static final String SAMPLES_PER_PULSE = ".samplesPerPulse";
    /** Two samples for each half of the period. */
    private static final int LEAST_SAMPLES_A_PERIOD = 4;

    private SensorFitness() {}

    /** The measurement with the lines of fitness that the sensor text adds. */
    public static CaptureMeasurement extended(
            CaptureMeasurement measurement, Sensor sensor, ChannelMatch match, CheckSettings settings) {
        SupplyVoltage supply = SupplyVoltage.find(measurement, settings.supplyVolts());
        List<Fitness> lines = new ArrayList<>(measurement.fitness());
        for (SensorChannel channel : sensor.channels()) {
            Optional<ChannelMeasurement> measured = Lines.measured(measurement, match, channel)
                    .filter(it -> it.role() == Role.PWM && it.status() == Status.OK);
            if (measured.isPresent()) {
                tooSeldom(
                                measured.get(),
                                channel,
                                measurement.capture().timeBase().stepSeconds())
                        .ifPresent(lines::add);
                ProbeFactor.line(measured.get(), channel, sensor, supply).ifPresent(lines::add);
            }
        }
        return new CaptureMeasurement(
                measurement.capture(), measurement.settings(), List.copyOf(lines), measurement.channels());
    }

    // Sampled too seldom, a carrier looks like a slower one, whose pulses may well have enough samples.
    private static Optional<Fitness> tooSeldom(ChannelMeasurement measured, SensorChannel channel, double stepSeconds) {
        OptionalDouble highest = channel.frequency()
                .flatMap(range -> range.max().or(range::min))
                .map(Limit::value)
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
        if (highest.isEmpty() || LEAST_SAMPLES_A_PERIOD * stepSeconds * highest.getAsDouble() <= 1) {
            return Optional.empty();
        }
        double needed = LEAST_SAMPLES_A_PERIOD * highest.getAsDouble();
        return Optional.of(new Fitness(
                measured.channel().name() + SAMPLES_PER_PULSE,
                Grade.UNFIT,
                "a carrier of " + Say.amount(highest.getAsDouble(), "Hz") + ", as the sensor may have, has "
                        + Say.amount(1 / stepSeconds / highest.getAsDouble(), "")
                        + " samples a period, so that what was recorded may be an alias of it; record at "
                        + Say.amount(needed, "Hz") + " or more, better ten times that"));
    }
}
