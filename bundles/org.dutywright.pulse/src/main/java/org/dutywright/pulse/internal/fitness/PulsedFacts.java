// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import org.dutywright.pulse.StateLevels;

/**
 * What the rules may know of a channel whose pulses were measured.
 *
 * @param levels its state levels
 * @param codeStep smallest step of its samples, 0 if it could not be told
 * @param shortPulses the shorter ones of pulse and pause
 * @param signs what the samples tell of how they were recorded
 * @param pulses what all pulses tell of it
 * @param droop how far its levels run within pulses
 */
public record PulsedFacts(
        StateLevels levels,
        double codeStep,
        ShortPulses shortPulses,
        SampleSigns signs,
        PulseFacts pulses,
        DroopFacts droop) {}
