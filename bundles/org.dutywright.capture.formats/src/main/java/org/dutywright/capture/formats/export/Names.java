// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.export;

import org.dutywright.capture.Channel;
import org.dutywright.capture.ColumnHeading;

/** Headings that are read back as the same channel: a bare name is in volts. */
final class Names {
    private static final String VOLT = "V";

    private Names() {}

    /** Name and unit. */
    static String withUnit(Channel channel) {
        String unit = channel.unit().isEmpty() ? ColumnHeading.NO_UNIT : channel.unit();
        return channel.name() + " (" + unit + ")";
    }

    /** The name, and the unit where it is not the volt. */
    static String withOtherUnit(Channel channel) {
        return channel.unit().equals(VOLT) ? channel.name() : withUnit(channel);
    }
}
