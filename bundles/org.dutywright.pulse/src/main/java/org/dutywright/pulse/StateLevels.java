// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * The two state levels of a channel (IEEE Std 181-2011).
 *
 * @param low level of the low state
 * @param high level of the high state
 * @param lowNoise standard deviation of the samples around the low level
 * @param highNoise standard deviation of the samples around the high level
 */
public record StateLevels(Uncertain low, Uncertain high, double lowNoise, double highNoise) {
    /** High minus low, above 0. */
    public double swing() {
        return high.value() - low.value();
    }

    /** Reference level at so many percent of the swing above the low level. */
    public double reference(double percent) {
        return low.value() + percent / 100 * swing();
    }
}
