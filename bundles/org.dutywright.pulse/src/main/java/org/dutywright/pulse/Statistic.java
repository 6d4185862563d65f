// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * What whole, undisturbed cycles show of one quantity.
 *
 * @param mean over the recorded cycles
 * @param min smallest value
 * @param max largest value
 * @param sd sample standard deviation (n - 1); NaN never: 0 for a single cycle
 * @param u standard uncertainty of {@code mean}
 * @param u95 half-width of the 95 % interval of {@code mean}
 * @param budget what u and u95 are made of, {@link Budget#NONE} where only the numbers are known
 */
public record Statistic(double mean, double min, double max, double sd, double u, double u95, Budget budget) {
    /** A statistic whose uncertainty is known as numbers only. */
    public Statistic(double mean, double min, double max, double sd, double u, double u95) {
        this(mean, min, max, sd, u, u95, Budget.NONE);
    }
}
