// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of a channel before it is measured.
 *
 * @param role what it is; empty: PWM if it has two states and transitions, else level
 * @param active its active level; empty: high
 * @param travel end points that turn its duty into travel
 * @param transitionMaxSeconds longest transition of a healthy sensor
 * @param input levels at which the input of the module switches
 */
public record ChannelPlan(
        Optional<Role> role,
        Optional<ActiveLevel> active,
        Optional<Travel> travel,
        OptionalDouble transitionMaxSeconds,
        Optional<InputThresholds> input) {

    /** A channel whose input is not known. */
    public ChannelPlan(
            Optional<Role> role,
            Optional<ActiveLevel> active,
            Optional<Travel> travel,
            OptionalDouble transitionMaxSeconds) {
        this(role, active, travel, transitionMaxSeconds, Optional.empty());
    }

    /** Nothing known. */
    public static ChannelPlan unknown() {
        return new ChannelPlan(Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty());
    }

    /**
     * The two end points of a channel.
     *
     * @param releasedDutyPercent duty at 0 % travel
     * @param pressedDutyPercent duty at 100 % travel, different from the other
     */
    public record Travel(double releasedDutyPercent, double pressedDutyPercent) {
        /** Travel in percent for a duty: 0 released, 100 pressed, linear between and beyond. */
        public double percentAt(double dutyPercent) {
            return 100 * (dutyPercent - releasedDutyPercent) / (pressedDutyPercent - releasedDutyPercent);
        }
    }
}
