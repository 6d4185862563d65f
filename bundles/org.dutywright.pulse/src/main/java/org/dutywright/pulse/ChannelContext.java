// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * What a measurement may know of the channel it measures.
 *
 * @param name of the channel
 * @param unit of its samples
 * @param active its active level
 * @param levels its state levels as read; errors of the recorder's gain and offset are not in their budgets, because they move
 *     signal and levels together
 * @param medianPeriodSeconds median period of its cycles
 * @param rise how well the instants of its rising transitions are known
 * @param fall how well the instants of its falling transitions are known
 * @param samplesPerIndependent number of samples that tell as much of a mean as one with independent noise, at least 1
 * @param codeStep smallest step of the samples in the channel's unit, 0 if it could not be told
 * @param codeKept standard uncertainty of the mean of many samples of a state from the code step: what noise does not average
 * @param stepSeconds typical distance of two samples
 * @param timeBaseRelativeUncertainty relative standard uncertainty of the recording's clock, whose error is rectangular
 * @param settings those in use
 */
public record ChannelContext(
        String name,
        String unit,
        ActiveLevel active,
        StateLevels levels,
        double medianPeriodSeconds,
        EdgeUncertainty rise,
        EdgeUncertainty fall,
        double samplesPerIndependent,
        double codeStep,
        double codeKept,
        double stepSeconds,
        double timeBaseRelativeUncertainty,
        PulseSettings settings) {

    /** Both directions alike, sampling that does not average out, independent noise. */
    public ChannelContext(
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
        this(
                name,
                unit,
                active,
                levels,
                medianPeriodSeconds,
                new EdgeUncertainty(edgeNoiseSeconds, edgeSamplingSeconds, edgeSamplingSeconds, 0, 0, 0),
                new EdgeUncertainty(edgeNoiseSeconds, edgeSamplingSeconds, edgeSamplingSeconds, 0, 0, 0),
                1,
                codeStep,
                codeStep / Math.sqrt(12),
                stepSeconds,
                timeBaseRelativeUncertainty,
                settings);
    }

    /** Transitions into the active level, with which cycles start and end. */
    public EdgeUncertainty starting() {
        return active == ActiveLevel.HIGH ? rise : fall;
    }

    /** Transitions out of the active level. */
    public EdgeUncertainty switching() {
        return active == ActiveLevel.HIGH ? fall : rise;
    }

    /** Standard uncertainty of one edge's instant from noise, of the less certain direction. */
    public double edgeNoiseSeconds() {
        return Math.max(rise.noiseSeconds(), fall.noiseSeconds());
    }

    /** Standard uncertainty of one edge's instant from everything but noise, of the less certain direction. */
    public double edgeSamplingSeconds() {
        return Math.max(rise.withoutNoiseSeconds(), fall.withoutNoiseSeconds());
    }

    /** Standard uncertainty of one edge's instant, of the less certain direction. */
    public double edgeUncertaintySeconds() {
        return Math.max(rise.singleSeconds(), fall.singleSeconds());
    }
}
