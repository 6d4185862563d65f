// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.agreement;

/**
 * Travel of two channels at one instant.
 *
 * @param seconds the instant, the middle of a cycle of the first channel
 * @param periodSeconds period of that cycle
 * @param firstPercent travel of the first channel
 * @param secondPercent travel of the second channel, interpolated
 */
public record PairedTravel(double seconds, double periodSeconds, double firstPercent, double secondPercent) {
    /** First minus second. */
    public double differencePercent() {
        return firstPercent - secondPercent;
    }
}
