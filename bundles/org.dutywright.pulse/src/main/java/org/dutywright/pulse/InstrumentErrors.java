// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.List;
import org.dutywright.pulse.Budget.Component;

/**
 * What was stated about the recorder's voltage scale: bounds of the errors of its gain and of its zero, each anywhere within
 * (rectangular, JCGM 100, 4.3.7). They move all levels and means together; duty, period and transitions do not depend on
 * them. Where nothing was stated, uncertainties of voltages cover the reading only.
 *
 * @param gainShare half-width of the gain error as a share of the reading, 0 where not stated
 * @param offsetVolts half-width of the zero error, 0 where not stated
 */
public record InstrumentErrors(double gainShare, double offsetVolts) {
    /** Those of settings; only channels in volts have them. */
    public static InstrumentErrors of(PulseSettings settings, String unit) {
        return unit.equals("V")
                ? new InstrumentErrors(
                        settings.get(RecorderSettings.GAIN_ERROR) / 100, settings.get(RecorderSettings.OFFSET_ERROR))
                : new InstrumentErrors(0, 0);
    }

    /** Whether anything was stated. */
    public boolean isStated() {
        return gainShare > 0 || offsetVolts > 0;
    }

    /** What uncertainties of voltages cover: "reading only", or "reading, gain and offset of the recorder". */
    public String covers() {
        return isStated() ? "reading, gain and offset of the recorder" : "reading only";
    }

    /** What they add to the budget of a level or a mean. */
    public List<Component> components(double value) {
        return List.of(
                Component.rectangular("gain of the recorder", gainShare * Math.abs(value)),
                Component.rectangular("offset of the recorder", offsetVolts));
    }

    /** A level or mean with these errors added to its budget. */
    public Uncertain with(Uncertain reading) {
        return isStated() ? reading.budget().and(components(reading.value())).around(reading.value()) : reading;
    }
}
