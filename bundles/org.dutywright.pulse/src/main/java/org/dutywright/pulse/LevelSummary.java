// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * What a channel without pulses shows, in its unit. The mean is over the recorded samples.
 *
 * @param mean average, with its uncertainty
 * @param min smallest sample
 * @param max largest sample
 * @param rms root of the mean square
 */
public record LevelSummary(Uncertain mean, double min, double max, double rms) {}
