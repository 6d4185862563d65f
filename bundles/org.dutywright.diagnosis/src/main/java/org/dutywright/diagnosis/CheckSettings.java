// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the user adds to a check.
 *
 * @param supplyVolts supply voltage in volts where no supply channel was recorded
 * @param position where the sensor was during the whole capture, empty if that is not known
 */
public record CheckSettings(OptionalDouble supplyVolts, Optional<Position> position) {
    /** Nothing known. */
    public static CheckSettings none() {
        return new CheckSettings(OptionalDouble.empty(), Optional.empty());
    }
}
