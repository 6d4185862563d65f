// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.Locale;

/** The state of a channel whose share of the period is the duty. */
public enum ActiveLevel {
    HIGH,
    LOW;

    /** The word used in files and on the command line. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
