// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

/** Where a channel's duty comes from; percent of the period spent in the active level. */
public sealed interface DutyLaw {

    /** Follows the travel between two end points. */
    record EndPoints(double releasedPercent, double pressedPercent) implements DutyLaw {
        @Override
        public double dutyPercent(double seconds, double travelPercent) {
            return releasedPercent + travelPercent / 100 * (pressedPercent - releasedPercent);
        }
    }

    /** Stated over time, whatever the travel. */
    record OverTime(Profile dutyPercent) implements DutyLaw {
        @Override
        public double dutyPercent(double seconds, double travelPercent) {
            return dutyPercent.at(seconds);
        }
    }

    /** The duty of a cycle that starts at an instant and at a travel. */
    double dutyPercent(double seconds, double travelPercent);
}
