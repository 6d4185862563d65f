// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

/**
 * The codes of an analogue-to-digital converter. A code stands for {@code originVolts + code · stepVolts}.
 *
 * @param stepVolts distance of two codes
 * @param originVolts value of code 0
 * @param lowestCode what lies below is clipped to it
 * @param highestCode what lies above is clipped to it
 */
public record Quantisation(double stepVolts, double originVolts, long lowestCode, long highestCode) {

    /** A mid-tread converter of unlimited range with 0 V among its codes. */
    public static Quantisation ofStep(double stepVolts) {
        return new Quantisation(stepVolts, 0, Long.MIN_VALUE, Long.MAX_VALUE);
    }

    /** A converter with 2^bits codes from the lower end of its range on. */
    public static Quantisation ofBits(int bits, double minVolts, double maxVolts) {
        long codes = 1L << bits;
        return new Quantisation((maxVolts - minVolts) / codes, minVolts, 0, codes - 1);
    }

    /** The value that is recorded for a voltage. */
    public double quantise(double volts) {
        long code = Math.round((volts - originVolts) / stepVolts);
        return originVolts + stepVolts * Math.min(Math.max(code, lowestCode), highestCode);
    }
}
