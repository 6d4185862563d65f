// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * What a measurement may know of the channel it measures.
 *
 * @param name of the channel
 * @param unit of its samples
 * @param active its active level
 * @param levels its state levels
 * @param medianPeriodSeconds median period of its cycles
 * @param edgeUncertaintySeconds standard uncertainty of one edge's instant, from noise and sampling
 * @param stepSeconds typical distance of two samples
 * @param timeBaseRelativeUncertainty relative standard uncertainty of the recording's clock
 * @param settings those in use
 */
public record ChannelContext(
        String name,
        String unit,
        ActiveLevel active,
        StateLevels levels,
        double medianPeriodSeconds,
        double edgeUncertaintySeconds,
        double stepSeconds,
        double timeBaseRelativeUncertainty,
        PulseSettings settings) {}
