// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import org.dutywright.pulse.PulseSettings.Setting;

/** What is known of the recorder, part of {@link PulseSettings#DECLARED}. */
public final class RecorderSettings {
    /** Bound of the recorder's gain error. */
    public static final Setting GAIN_ERROR = new Setting(
            "instrument.gain-error",
            "Gain error of the recorder",
            "%",
            0,
            0,
            50,
            "Half-width of the interval in which the error of the recorder's gain lies, in percent of the reading; 0 where it is not"
                    + " known: uncertainties of voltages then cover the reading only.");

    /** Bound of the recorder's zero error. */
    public static final Setting OFFSET_ERROR = new Setting(
            "instrument.offset-error",
            "Offset error of the recorder",
            "V",
            0,
            0,
            1000,
            "Half-width of the interval in which the error of the recorder's zero lies; 0 where it is not known.");

    /** Bound of the error of the recorder's clock. */
    public static final Setting TIME_BASE = new Setting(
            "instrument.time-base",
            "Clock error of the recorder",
            "ppm",
            CaptureMeasurer.DEFAULT_TIME_BASE_PPM,
            0,
            100_000,
            "Half-width of the interval in which the relative error of the recorder's clock lies, in parts per million.");

    private RecorderSettings() {}
}
