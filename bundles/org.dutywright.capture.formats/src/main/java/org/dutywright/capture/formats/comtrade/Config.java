// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a configuration says.
 *
 * @param revision year of the standard
 * @param analogs analog channels, in order
 * @param digitals names of the status channels, in order
 * @param rates sample rates, in order; empty if only the time stamps tell
 * @param samples number of samples declared, 0 if unknown
 * @param format of the data
 * @param stampSeconds seconds of one count of a time stamp
 * @param triggerSeconds from the first sample to the trigger, empty if it cannot be told
 */
record Config(
        int revision,
        List<Analog> analogs,
        List<String> digitals,
        List<Rate> rates,
        long samples,
        DataFormat format,
        double stampSeconds,
        OptionalDouble triggerSeconds) {

    /**
     * An analog channel: value = a · number + b.
     *
     * @param name its identifier
     * @param unit as written
     * @param skewMicroseconds as written, 0 if not said
     * @param side P for primary values, S for secondary ones, empty if not said
     */
    record Analog(String name, String unit, double a, double b, double skewMicroseconds, String side) {}

    /**
     * A sample rate.
     *
     * @param hertz samples a second, above 0
     * @param lastSample number, from 1 on, of the last sample at it
     */
    record Rate(double hertz, long lastSample) {}

    /** Copies its lists. */
    Config {
        analogs = List.copyOf(analogs);
        digitals = List.copyOf(digitals);
        rates = List.copyOf(rates);
    }

    int columns() {
        return analogs.size() + digitals.size();
    }
}
