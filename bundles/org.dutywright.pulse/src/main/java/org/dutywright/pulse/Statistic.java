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
 */
public record Statistic(double mean, double min, double max, double sd, double u, double u95) {}
