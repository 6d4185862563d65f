// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

/**
 * Where the samples of the two states lie.
 *
 * @param lower a sample up to it belongs to the low state
 * @param upper a sample from it on belongs to the high state
 * @param min smallest sample of the channel
 * @param max largest sample of the channel
 * @param codeStep smallest step of the samples, 0 if it could not be told
 */
public record StateZones(double lower, double upper, double min, double max, double codeStep) {
    /** Values closer than this share of the range are the same value, read from different digits. */
    private static final double SAME = 1e-9;

    /** Number of the zone of a sample: -1 low, 1 high, 0 between them. */
    int zone(double value) {
        if (value <= lower) {
            return -1;
        }
        return value >= upper ? 1 : 0;
    }

    /** The value furthest from the other state that occurs in a zone. */
    double extreme(int zone) {
        return zone < 0 ? min : max;
    }

    boolean isExtreme(double value, int zone) {
        return Math.abs(value - extreme(zone)) <= tolerance();
    }

    /** Whether a value is the code next to the extreme one; never without codes. */
    boolean isNextToExtreme(double value, int zone) {
        return codeStep > 0 && Math.abs(value - extreme(zone) + zone * codeStep) <= tolerance();
    }

    private double tolerance() {
        return Math.max(SAME * (max - min), codeStep / 4);
    }
}
