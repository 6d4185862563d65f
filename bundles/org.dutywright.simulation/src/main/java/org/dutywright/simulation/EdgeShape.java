// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

/** How a signal gets from one level to another. */
public sealed interface EdgeShape {

    /** Time in seconds from the start of a full transition to its 50 % point. */
    double leadSeconds();

    /**
     * Volts some time after the transition has begun.
     *
     * @param fromVolts where it began
     * @param toVolts where it leads
     * @param swingVolts distance of the two state levels, which the full duration belongs to
     * @param elapsedSeconds time since it began
     */
    double volts(double fromVolts, double toVolts, double swingVolts, double elapsedSeconds);

    /** Time in seconds after which a transition of the whole swing stands at its target. */
    double settledSeconds();

    /**
     * A straight line. A transition of a part of the swing has the same slope and takes that part of the time.
     *
     * @param durationSeconds from 0 to 100 % of the swing; 10 to 90 % takes 0.8 of it
     */
    record Ramp(double durationSeconds) implements EdgeShape {
        @Override
        public double leadSeconds() {
            return durationSeconds / 2;
        }

        @Override
        public double volts(double fromVolts, double toVolts, double swingVolts, double elapsedSeconds) {
            double needed = swingVolts > 0 ? durationSeconds * Math.abs(toVolts - fromVolts) / swingVolts : 0;
            if (elapsedSeconds >= needed) {
                return toVolts;
            }
            return fromVolts + (toVolts - fromVolts) * (elapsedSeconds / needed);
        }

        @Override
        public double settledSeconds() {
            return durationSeconds;
        }
    }

    /**
     * A single pole: charging or discharging through a resistance. 10 to 90 % takes ln 9 = 2.197 time constants.
     *
     * @param timeConstantSeconds time to 63.2 % of the way
     */
    record Exponential(double timeConstantSeconds) implements EdgeShape {

        /** After that many time constants less than 1e-17 of the swing is left, below what a double can tell. */
        private static final double TIME_CONSTANTS_TO_SETTLE = 40;

        @Override
        public double leadSeconds() {
            return timeConstantSeconds * StrictMath.log(2);
        }

        @Override
        public double volts(double fromVolts, double toVolts, double swingVolts, double elapsedSeconds) {
            if (elapsedSeconds >= settledSeconds()) {
                return toVolts;
            }
            // StrictMath: equal scenarios give equal bytes on every machine.
            return toVolts + (fromVolts - toVolts) * StrictMath.exp(-elapsedSeconds / timeConstantSeconds);
        }

        @Override
        public double settledSeconds() {
            return TIME_CONSTANTS_TO_SETTLE * timeConstantSeconds;
        }
    }
}
