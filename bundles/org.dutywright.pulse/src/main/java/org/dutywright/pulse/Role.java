// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.Locale;

/** What a channel of a capture is to the measurement. */
public enum Role {
    /** Two states; position or another quantity in the duty cycle. */
    PWM,
    /** The supply that the sensor or its pull-up is fed from. */
    SUPPLY,
    /** Voltage of a ground point against the recording's reference. */
    GROUND,
    /** Any slowly changing quantity. */
    LEVEL,
    /** A contact with two states. */
    SWITCH,
    /** Not measured. */
    IGNORE;

    /** The word used in files and on the command line. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
