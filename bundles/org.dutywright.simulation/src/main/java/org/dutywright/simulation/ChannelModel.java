// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

/**
 * A healthy channel of a simulated sensor.
 *
 * @param name heading of its column
 * @param activeHigh whether the duty counts the high level
 * @param carrierHz its own carrier; channels are not synchronous
 * @param phasePercent share of its period that has passed at the start of the recording
 * @param duty where its duty comes from
 * @param lowVolts low level
 * @param highVolts high level, above the low one
 * @param rise shape of rising edges; the 50 % point lies at the carrier's instant
 * @param fall shape of falling edges; likewise
 * @param jitterSeconds standard deviation of its period; every edge is displaced by white noise of 1/√2 of it
 * @param noiseVolts RMS of the white noise on its samples
 */
public record ChannelModel(
        String name,
        boolean activeHigh,
        double carrierHz,
        double phasePercent,
        DutyLaw duty,
        double lowVolts,
        double highVolts,
        EdgeShape rise,
        EdgeShape fall,
        double jitterSeconds,
        double noiseVolts) {

    /** Period of the healthy carrier. */
    public double periodSeconds() {
        return 1 / carrierHz;
    }

    /** Distance of the two levels. */
    public double swingVolts() {
        return highVolts - lowVolts;
    }

    /** Shape of the edges into one state. */
    public EdgeShape edgeInto(boolean high) {
        return high ? rise : fall;
    }
}
