// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.sensor.Sensor.Duty;

/**
 * The duties that a channel may show anywhere in its travel, in percent: from the lower end point minus the
 * tolerance to the upper plus it, and inside the valid band.
 */
public record DutyBand(OptionalDouble lowerPercent, OptionalDouble upperPercent) {

    /** The band of a sensor text, empty if the text limits nothing. */
    public static Optional<DutyBand> allowed(Duty duty) {
        OptionalDouble lower = duty.validMinPercent();
        OptionalDouble upper = duty.validMaxPercent();
        if (duty.tolerancePercent().isPresent()) {
            double tolerance = duty.tolerancePercent().getAsDouble();
            double low = Math.min(duty.releasedPercent(), duty.pressedPercent()) - tolerance;
            double high = Math.max(duty.releasedPercent(), duty.pressedPercent()) + tolerance;
            lower = OptionalDouble.of(Math.max(low, lower.orElse(low)));
            upper = OptionalDouble.of(Math.min(high, upper.orElse(high)));
        }
        return lower.isEmpty() && upper.isEmpty() ? Optional.empty() : Optional.of(new DutyBand(lower, upper));
    }

    /** The lower end, minus infinity if there is none. */
    public double lowerOrInfinity() {
        return lowerPercent.orElse(Double.NEGATIVE_INFINITY);
    }

    /** The upper end, infinity if there is none. */
    public double upperOrInfinity() {
        return upperPercent.orElse(Double.POSITIVE_INFINITY);
    }
}
