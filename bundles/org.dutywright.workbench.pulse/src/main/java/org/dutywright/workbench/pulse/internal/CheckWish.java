// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.diagnosis.CheckSettings;
import org.dutywright.diagnosis.Position;
import org.dutywright.sensor.Sensor;

/**
 * What the user wants checked.
 *
 * @param sensor what the capture is compared with
 * @param settings what the user adds
 */
record CheckWish(Sensor sensor, CheckSettings settings) {
    static CheckWish of(Sensor sensor) {
        return new CheckWish(sensor, CheckSettings.none());
    }

    /**
     * The supply voltage that a text means.
     *
     * @return empty if the text is empty
     * @throws NumberFormatException if it is no number above 0
     */
    static OptionalDouble supply(String text) {
        if (text.isBlank()) {
            return OptionalDouble.empty();
        }
        double volts = Double.parseDouble(text.strip().replace(',', '.'));
        if (!(volts > 0 && volts < Double.POSITIVE_INFINITY)) {
            throw new NumberFormatException(text);
        }
        return OptionalDouble.of(volts);
    }

    /** The position of an entry of the list: not known, released, pressed. */
    static Optional<Position> position(int index) {
        return index <= 0 ? Optional.empty() : Optional.of(Position.values()[index - 1]);
    }
}
