// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

/**
 * How finely time stamps were printed. Fixed decimals keep their distance for all stamps; a fixed number of
 * significant digits makes the largest stamp the coarsest. The resolution is that of the largest stamp, by the most
 * decimals and the most significant digits that occur: for fixed decimals both say the same.
 */
final class StampDigits {
    private static final int MOST_EXPONENT_DIGITS = 4;

    private int decimals = Integer.MIN_VALUE;
    private int significant;
    private long largestWhole;

    /** Counts the digits of a number, which must be one. */
    void add(byte[] bytes, int from, int to) {
        int afterMark = 0;
        int fromFirstNonZero = 0;
        boolean marked = false;
        int i = from;
        for (; i < to && (bytes[i] | 0x20) != 'e'; i++) {
            byte b = bytes[i];
            if (b == '.' || b == ',') {
                marked = true;
            } else if (b >= '0' && b <= '9') {
                afterMark += marked ? 1 : 0;
                fromFirstNonZero += b != '0' || fromFirstNonZero > 0 ? 1 : 0;
            }
        }
        int exponent = i < to ? exponent(bytes, i + 1, to) : 0;
        decimals = Math.max(decimals, afterMark - exponent);
        significant = Math.max(significant, fromFirstNonZero);
    }

    /**
     * Counts the digits of a number by its value.
     *
     * @param whole all its digits as a whole number, not negative
     * @param decimals how many of them stand behind the mark
     */
    void add(long whole, int decimals) {
        this.decimals = Math.max(this.decimals, decimals);
        largestWhole = Math.max(largestWhole, whole);
    }

    /** Takes over what was counted elsewhere. */
    void add(StampDigits others) {
        decimals = Math.max(decimals, others.decimals);
        significant = Math.max(significant, others.significant);
        largestWhole = Math.max(largestWhole, others.largestWhole);
    }

    private int significant() {
        return Math.max(
                significant, largestWhole == 0 ? 0 : Long.toString(largestWhole).length());
    }

    private static int exponent(byte[] bytes, int from, int to) {
        boolean negative = from < to && bytes[from] == '-';
        int value = 0;
        int digits = 0;
        for (int i = from; i < to && digits < MOST_EXPONENT_DIGITS; i++) {
            if (bytes[i] >= '0' && bytes[i] <= '9') {
                value = 10 * value + bytes[i] - '0';
                digits++;
            }
        }
        return negative ? -value : value;
    }

    /**
     * The distance of two stamps that the printed digits tell apart.
     *
     * @param largest the largest absolute value of a stamp, in the unit of the column
     */
    double resolution(double largest) {
        if (decimals == Integer.MIN_VALUE) {
            return 0;
        }
        double byDecimals = Math.pow(10, -decimals);
        int significantDigits = significant();
        if (largest == 0 || significantDigits == 0) {
            return byDecimals;
        }
        double bySignificant = Math.pow(10, Math.floor(Math.log10(largest)) + 1 - significantDigits);
        return Math.max(byDecimals, bySignificant);
    }
}
