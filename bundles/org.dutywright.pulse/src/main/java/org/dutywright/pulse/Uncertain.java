// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * A value with what is known about it.
 *
 * @param value the estimate
 * @param u standard uncertainty (k = 1), JCGM 100
 * @param u95 half-width of the 95 % interval
 * @param budget what they are made of, {@link Budget#NONE} where only the numbers are known
 */
public record Uncertain(double value, double u, double u95, Budget budget) {
    /** A value whose uncertainty is known as numbers only. */
    public Uncertain(double value, double u, double u95) {
        this(value, u, u95, Budget.NONE);
    }
}
