// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

/**
 * How far the levels of a channel run towards each other within pulses.
 *
 * @param low mean rise of the low level, as a share of the swing
 * @param high mean fall of the high level
 * @param sure whether both are beyond doubt
 */
public record DroopFacts(double low, double high, boolean sure) {}
