// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * One of the two states as the edge finder sees it while the signal is in it. Levels carry a sign such that the state is
 * below and the other one above; so one piece of code serves both.
 *
 * @param high whether it is the high state
 * @param sign 1 for the low state, -1 for the high one
 * @param level of the state
 * @param home nearer reference level: a sample up to it is at home
 * @param near up to here a sample is at home and within the noise of the state
 * @param leave beyond it a sample is outside the state
 * @param clear beyond it a sample is outside the state, whichever state shows the larger noise: short pulses show little of noise
 *     that is alike over their samples
 * @param farOff beyond it a sample is on its way to the other state or a runt, not noise and not a moved level
 * @param farInNoise the same where pulses are long against their edges: noise takes samples of a moved level that far
 * @param middle 50 % level
 * @param trigger a sample that reaches it ends the state
 * @param swing distance of the two levels
 */
record StateSide(
        boolean high,
        int sign,
        double level,
        double home,
        double near,
        double leave,
        double clear,
        double farOff,
        double farInNoise,
        double middle,
        double trigger,
        double swing) {
    /** A level that has moved by less than this share of the swing still tells the level of its pulse. */
    private static final double FAR = 0.25;

    private static final double MOST_FAR = 0.45;
    private static final double FAR_NOISE = 0.75;
    /** Width of a state without noise, as a share of the swing. */
    private static final double NOISELESS_WIDTH = 0.1;

    /** The duration of a transition is only told where both states are this near their levels, as a share of the swing. */
    private static final double MOST_OFF = 0.05;

    private static final double MOST_OFF_SETTLED = 0.07;

    /** A plateau of fewer samples may be the beginning of a slow edge. */
    private static final int LEAST_PLATEAU = 8;

    /** Noise takes a mean off by two and a half standard deviations; where neighbours are alike, a quarter of the samples counts. */
    private static final double NOISE_SIGMAS = 5;

    /** A state is at least so many times as wide as the RMS of its noise. */
    private static final double WIDTH_SIGMAS = 6;

    static StateSide of(Thresholds levels, boolean high) {
        int sign = high ? -1 : 1;
        double level = sign * (high ? levels.high() : levels.low());
        double home = sign * (high ? levels.upper() : levels.lower());
        double leave = level + (high ? levels.highLeave() : levels.lowLeave());
        double middle = sign * levels.middle();
        return new StateSide(
                high,
                sign,
                level,
                home,
                Math.min(home, leave),
                leave,
                level + Math.max(levels.highLeave(), levels.lowLeave()),
                Math.max(leave, level + FAR * levels.swing()),
                Math.max(leave, level + far(leave - level, levels.swing())),
                middle,
                middle + levels.hysteresis(),
                levels.swing());
    }

    // Noise carries samples of a moved level further: what it adds to the state's own width, it adds here nearly whole.
    private static double far(double width, double swing) {
        double noise = Math.max(0, width - NOISELESS_WIDTH * swing);
        return Math.min(MOST_FAR * swing, FAR * swing + FAR_NOISE * noise);
    }

    /**
     * Whether the level of a pulse of this state has moved towards the other state: near a reference level noise decides when the
     * signal passes it. Samples close to a slow edge lie off the level as well, so they tell it only where they are more
     * than those on the edge.
     */
    boolean hasMoved(Pulse pulse) {
        if (pulse.plateauSamples >= LEAST_PLATEAU) {
            double noise = NOISE_SIGMAS * mostNoise() / Math.sqrt((double) pulse.plateauSamples);
            // a slow edge at one end takes the mean along, but not the other end of the line through the samples
            double line = Math.abs(pulse.plateauTrend) * pulse.plateauSamples / 2;
            return sign * pulse.plateau - line - level > Math.max(MOST_OFF * swing, noise);
        }
        return pulse.settledSamples > pulse.edgeSamples && sign * pulse.settled - level > MOST_OFF_SETTLED * swing;
    }

    /** RMS of the noise at most. */
    double mostNoise() {
        return (leave - level) / WIDTH_SIGMAS;
    }

    /** Share of the way from a sample to the next one at which a level is crossed; all three with the sign. */
    static double share(double px, double x, double level) {
        return (level - px) / (x - px);
    }
}
