// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * What a measurement may know of the channel it measures.
 *
 * <p>The uncertainty of an edge's instant has two parts. The part from noise differs from edge to edge, so it averages
 * out over many cycles. The part from sampling may be the same for every edge, because the carrier may be locked to the
 * clock of the recorder; it is never taken to average out.
 *
 * @param name of the channel
 * @param unit of its samples
 * @param active its active level
 * @param levels its state levels
 * @param medianPeriodSeconds median period of its cycles
 * @param edgeNoiseSeconds standard uncertainty of one edge's instant from noise
 * @param edgeSamplingSeconds standard uncertainty of one edge's instant from sampling and quantisation
 * @param codeStep smallest step of the samples in the channel's unit, 0 if it could not be told
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
        double edgeNoiseSeconds,
        double edgeSamplingSeconds,
        double codeStep,
        double stepSeconds,
        double timeBaseRelativeUncertainty,
        PulseSettings settings) {

    /** Standard uncertainty of one edge's instant, from noise, sampling and quantisation. */
    public double edgeUncertaintySeconds() {
        return Math.hypot(edgeNoiseSeconds, edgeSamplingSeconds);
    }
}
