// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import org.dutywright.pulse.StateLevels;

/**
 * The two states of a channel.
 *
 * @param levels the state levels
 * @param thresholds made from them
 * @param codeStep smallest step of the samples, 0 if it could not be told
 * @param transitions number of transitions found with the provisional levels
 * @param periodGuessSeconds first guess of the period, NaN if no state came twice
 * @param firstLow low level of the first pulses
 * @param firstHigh high level of the first pulses
 * @param uFirstLow standard uncertainty of firstLow from noise
 * @param uFirstHigh standard uncertainty of firstHigh from noise
 * @param droop how far the levels run within pulses
 * @param track the levels over the recording
 * @param samplesPerIndependent number of samples that tell as much of a mean as one with independent noise, at least 1
 * @param samplesPerPulse median number of samples of the shorter kind of pulse, at most 64
 */
record States(
        StateLevels levels,
        Thresholds thresholds,
        double codeStep,
        long transitions,
        double periodGuessSeconds,
        double firstLow,
        double firstHigh,
        double uFirstLow,
        double uFirstHigh,
        Droop droop,
        LevelTrack track,
        double samplesPerIndependent,
        int samplesPerPulse) {

    /** The same states with levels that move. */
    States along(LevelTrack moving) {
        return new States(
                levels,
                thresholds,
                codeStep,
                transitions,
                periodGuessSeconds,
                firstLow,
                firstHigh,
                uFirstLow,
                uFirstHigh,
                droop,
                moving,
                samplesPerIndependent,
                samplesPerPulse);
    }
}
