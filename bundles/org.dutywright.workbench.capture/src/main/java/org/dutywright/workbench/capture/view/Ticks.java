// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

import java.util.stream.DoubleStream;
import java.util.stream.LongStream;
import org.dutywright.units.UnitPrinter;

/**
 * Round values along an axis and their labels, which carry unit and SI prefix.
 *
 * @param step distance of two values
 * @param unit symbol of the unit, may be empty
 */
public record Ticks(double step, String unit) {
    private static final int MOST_DIGITS = 15;
    private static final double NEARLY_ZERO_STEPS = 1e-6;

    /** Ticks of which at most so many lie in a span; their step is 1, 2 or 5 times a power of ten. */
    public static Ticks within(double span, int most, String unit) {
        double rough = span / Math.max(1, most);
        double power = Math.pow(10, Math.floor(Math.log10(rough)));
        for (int factor : new int[] {1, 2, 5}) {
            if (factor * power >= rough) {
                return new Ticks(factor * power, unit);
            }
        }
        return new Ticks(10 * power, unit);
    }

    /** The values from one to another. */
    public DoubleStream between(double low, double high) {
        return LongStream.rangeClosed((long) Math.ceil(low / step), (long) Math.floor(high / step))
                .mapToDouble(index -> index * step);
    }

    /** The label of a value, with as many digits as it takes to tell it from its neighbours. */
    public String label(double value) {
        if (Math.abs(value) < step * NEARLY_ZERO_STEPS) {
            return UnitPrinter.print(0, unit, 1);
        }
        int digits = exponent(value) - exponent(step) + 1;
        return UnitPrinter.print(value, unit, Math.clamp(digits, 1, MOST_DIGITS));
    }

    // a tenth of a millionth more, for a power of ten may come out a little too small
    private static int exponent(double value) {
        return (int) Math.floor(Math.log10(Math.abs(value)) + 1e-7);
    }
}
