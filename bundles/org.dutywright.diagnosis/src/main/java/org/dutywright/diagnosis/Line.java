// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.OptionalDouble;
import org.dutywright.pulse.Budget;

/**
 * One limit of the sensor text, or one count, compared with what was measured.
 *
 * @param item what is judged ("signal1.frequency", "signal2.events.runt")
 * @param measured the value, empty where there is none
 * @param u its standard uncertainty
 * @param unit symbol without prefix, empty for counts and states
 * @param lower lower limit
 * @param upper upper limit
 * @param conformityProbability probability that the true value lies inside the limits (JCGM 106), empty for
 *     counts and where nothing was measured
 * @param result what came of it
 * @param reason why, with the measured fact; empty for a plain pass
 * @param budget what u is made of, {@link Budget#NONE} where it is not known
 */
public record Line(
        String item,
        OptionalDouble measured,
        OptionalDouble u,
        String unit,
        OptionalDouble lower,
        OptionalDouble upper,
        OptionalDouble conformityProbability,
        LineResult result,
        String reason,
        Budget budget) {
    /** A line whose uncertainty is known as a number only. */
    public Line(
            String item,
            OptionalDouble measured,
            OptionalDouble u,
            String unit,
            OptionalDouble lower,
            OptionalDouble upper,
            OptionalDouble conformityProbability,
            LineResult result,
            String reason) {
        this(item, measured, u, unit, lower, upper, conformityProbability, result, reason, Budget.NONE);
    }
}
