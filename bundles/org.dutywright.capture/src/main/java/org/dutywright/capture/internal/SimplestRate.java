// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.internal;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * The simplest sample rate that a measured one can stand for. A step of 10 µs read from stamps comes out as
 * 100000.00000000001 Hz or so; instruments are set to short numbers, either of the rate (100 kHz) or of the step
 * (3 µs).
 */
final class SimplestRate {
    private static final int DOUBLE_DIGITS = 17;

    private SimplestRate() {}

    /**
     * Among all rates within {@code rate · (1 ± relativeHalfWidth)}, the one that has the fewest significant decimal
     * digits as a rate or as a step, the nearest one of these.
     */
    static double of(double rateHz, double relativeHalfWidth) {
        BigDecimal rate = simplest(rateHz, relativeHalfWidth);
        BigDecimal step = simplest(1 / rateHz, relativeHalfWidth);
        return digits(rate) <= digits(step) ? rate.doubleValue() : 1 / step.doubleValue();
    }

    private static BigDecimal simplest(double value, double relativeHalfWidth) {
        BigDecimal exact = new BigDecimal(value);
        double halfWidth = value * relativeHalfWidth;
        for (int digits = 1; digits < DOUBLE_DIGITS; digits++) {
            BigDecimal rounded = exact.round(new MathContext(digits));
            if (rounded.subtract(exact).abs().doubleValue() <= halfWidth) {
                return rounded;
            }
        }
        return exact.round(new MathContext(DOUBLE_DIGITS));
    }

    private static int digits(BigDecimal value) {
        return value.stripTrailingZeros().precision();
    }
}
