// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * One whole cycle: from one edge into the active level to the next, both at the 50 % reference level.
 *
 * @param index number of the cycle in its channel, from 0
 * @param startSeconds instant of its first edge in the capture's time
 * @param periodSeconds pulse period (IEEE Std 181-2011)
 * @param pulseDurationSeconds time spent in the active level
 * @param mean average of the signal over the cycle, in the channel's unit
 * @param disturbed whether an event keeps it out of the statistics
 */
public record Cycle(
        long index,
        double startSeconds,
        double periodSeconds,
        double pulseDurationSeconds,
        double mean,
        boolean disturbed) {
    /** 1 / period. */
    public double frequencyHz() {
        return 1 / periodSeconds;
    }

    /** Pulse duration as a share of the period in percent (the standard's duty factor, the trade's duty cycle). */
    public double dutyPercent() {
        return 100 * pulseDurationSeconds / periodSeconds;
    }

    /** Instant of the end of the cycle. */
    public double endSeconds() {
        return startSeconds + periodSeconds;
    }

    /** Instant of the middle of the cycle, to which its duty belongs. */
    public double middleSeconds() {
        return startSeconds + periodSeconds / 2;
    }
}
