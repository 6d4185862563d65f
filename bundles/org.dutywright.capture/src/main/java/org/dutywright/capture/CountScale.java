// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

/**
 * How the counts of a converter stand for values: {@code value = count · scale + offset}.
 *
 * @param scale value of one count, finite and not 0
 * @param offset value of count 0, finite
 */
public record CountScale(double scale, double offset) {

    /** Refuses what is not finite, and a scale of 0. */
    public CountScale {
        if (!Double.isFinite(scale) || scale == 0 || !Double.isFinite(offset)) {
            throw new IllegalArgumentException("no scale of counts: " + scale + ", " + offset);
        }
    }

    /** The value that a count stands for. */
    public double valueOf(int count) {
        return count * scale + offset;
    }

    /** The count nearest to a value, as a whole number that may lie outside of any range. */
    public double countOf(double value) {
        return Math.rint((value - offset) / scale);
    }

    /** The same counts for values that are multiplied by a factor, which is finite and not 0. */
    public CountScale times(double factor) {
        return new CountScale(scale * factor, offset * factor);
    }
}
