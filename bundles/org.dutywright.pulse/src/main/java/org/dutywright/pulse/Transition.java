// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * One passage from one state to the other.
 *
 * @param rising whether it leads to the high state
 * @param instantSeconds 50 % reference level instant, in the capture's time
 * @param durationSeconds time from the 10 % to the 90 % reference level (either direction), NaN where the
 *     signal did not pass both on its way
 * @param samplesOnEdge number of samples between the 10 % and the 90 % level
 */
public record Transition(boolean rising, double instantSeconds, double durationSeconds, int samplesOnEdge) {}
