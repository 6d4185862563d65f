// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * One stay in a state, from the 50 % instant of the transition into it to that of the next transition. A plain carrier
 * of numbers from the edge finder to the stages after it; all instants count from the capture's first sample.
 */
final class Pulse {
    /** Whether the state is the high one. */
    boolean high;
    /** Whether it starts with a transition; else with the first sample of a segment that tells the state. */
    boolean startsWithEdge;
    /** Whether it ends with a transition; else with the last sample of a segment. */
    boolean endsWithEdge;
    /** Where it starts. */
    double startSeconds;
    /** Where it ends. */
    double endSeconds;
    /** Sample of the capture that showed the transition into it, or the first one of a segment that told the state. */
    long startSample;
    /** Sample of the capture that showed the transition out of it, or the one after the segment. */
    long endSample;
    /** 10 to 90 % duration of the transition into it, NaN where the signal did not pass both. */
    double edgeSeconds = Double.NaN;
    /** Number of samples between 10 and 90 % of the transition into it. */
    int edgeSamples;
    /** Number of samples in the fit that gave the instant of the transition into it, 0 where it was interpolated. */
    int fitSamples;
    /** How long the transition into it belonged to neither state, NaN where that cannot be told; see {@link EdgeCore}. */
    double coreSeconds = Double.NaN;
    /** Steepness of the transition into it at the 50 % level, in units a second, above 0; NaN where it is not known. */
    double edgeSlope = Double.NaN;
    /** Second derivative over the first one there, a second, where the instant was interpolated; NaN where it is not known. */
    double edgeBend = Double.NaN;
    /** Whether further transitions were merged into the transition into it. */
    boolean bounced;
    /** Integral of the signal over the pulse. */
    double area;
    /** Sample that went furthest into the state. */
    double extreme;
    /** Level of the state at which the edge finder acted at its end. */
    double expected;
    /** Mean of the samples of the state outside transitions and their aberrations, NaN without any. */
    double plateau = Double.NaN;
    /** Number of those samples. */
    long plateauSamples;
    /** Sum of the squared deviations of those samples from their mean. */
    double plateauSquares;
    /** Slope of the least-squares line through those samples, a sample; 0 for fewer than three. */
    double plateauTrend;
    /** Sum of the deviations from the plateau's mean of its first samples, a third of the aberration region long. */
    double earlyOff;
    /** Number of those samples. */
    long earlySamples;
    /** Whether the plateau reaches into the aberration of the transition, because the pulse is short. */
    boolean nearEdges;
    /** Mean of all samples within the state, aberrations included, NaN without any. */
    double settled = Double.NaN;
    /** Number of those samples. */
    long settledSamples;
    /** Number of samples from trigger to trigger. */
    long samples;

    /** Mean of the best samples that tell the level: those of the plateau, else all within the state, else NaN. */
    double level() {
        return plateauSamples > 0 ? plateau : settled;
    }

    /** Number of samples in {@link #level}. */
    long levelSamples() {
        return plateauSamples > 0 ? plateauSamples : settledSamples;
    }

    double seconds() {
        return endSeconds - startSeconds;
    }

    /**
     * Joins two pulses of the same state and what lay between them, which did not count, into the first one.
     *
     * @param between the pulse of the other state between them
     * @param last the later pulse of the same state
     */
    void join(Pulse between, Pulse last) {
        boolean better = !(plateauSamples >= last.plateauSamples);
        if (better) {
            plateau = last.plateau;
            plateauSamples = last.plateauSamples;
            plateauSquares = last.plateauSquares;
            plateauTrend = last.plateauTrend;
            nearEdges = last.nearEdges;
        }
        if (!(settledSamples >= last.settledSamples)) {
            settled = last.settled;
            settledSamples = last.settledSamples;
        }
        extreme = high ? Math.max(extreme, last.extreme) : Math.min(extreme, last.extreme);
        area += between.area + last.area;
        samples += between.samples + last.samples;
        endSeconds = last.endSeconds;
        endSample = last.endSample;
        endsWithEdge = last.endsWithEdge;
    }
}
