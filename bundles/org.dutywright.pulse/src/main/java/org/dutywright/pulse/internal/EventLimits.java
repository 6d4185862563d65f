// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.util.OptionalDouble;
import org.dutywright.pulse.EventSettings;
import org.dutywright.pulse.PulseSettings;

/**
 * The limits of the events of one channel in seconds.
 *
 * @param periodSeconds median period T
 * @param missingFromSeconds active edges at least so far apart miss a pulse
 * @param extraWithinSeconds active edges less than so far apart have one too many
 * @param excursionSeconds a cycle further than this off T is an excursion
 * @param dropoutPulses so many absent pulses are a dropout
 * @param stuckSeconds so long without a transition at the end is stuck
 * @param slowEdgeSeconds longer transitions are slow
 * @param edgeNoiseShare standard uncertainty of a transition duration from noise, as a share of it
 * @param stepSeconds distance of two samples
 * @param sigmas standard uncertainties that an event needs beyond its limit
 */
record EventLimits(
        double periodSeconds,
        double missingFromSeconds,
        double extraWithinSeconds,
        double excursionSeconds,
        long dropoutPulses,
        double stuckSeconds,
        double slowEdgeSeconds,
        double edgeNoiseShare,
        double stepSeconds,
        double sigmas) {
    /** Doubt about two edges widens the limit of an extra pulse by no more than this share of the period. */
    private static final double MOST_DOUBT = 0.1;

    /** With fewer samples on an edge, the instants between them are only known to lie between them. */
    static final int SAMPLES_TO_INTERPOLATE = 5;

    /**
     * Limits for a channel.
     *
     * @param uEdgeSeconds standard uncertainty of an edge's instant
     * @param transitionMaxSeconds limit of the sensor, if it has one
     */
    static EventLimits of(
            double periodSeconds,
            double uEdgeSeconds,
            double stepSeconds,
            States states,
            OptionalDouble transitionMaxSeconds,
            PulseSettings settings) {
        double sigmas = settings.get(EventSettings.EVENT_SIGMA);
        double margin = sigmas * Math.sqrt(2) * uEdgeSeconds;
        double between =
                (settings.get(PulseSettings.UPPER_REFERENCE) - settings.get(PulseSettings.LOWER_REFERENCE)) / 100;
        double noise = Math.max(states.levels().lowNoise(), states.levels().highNoise());
        return new EventLimits(
                periodSeconds,
                settings.get(EventSettings.MISSING_FROM) * periodSeconds,
                settings.get(EventSettings.EXTRA_WITHIN) * periodSeconds + Math.min(margin, MOST_DOUBT * periodSeconds),
                Math.max(settings.get(EventSettings.EXCURSION) / 100 * periodSeconds, margin),
                Math.round(settings.get(EventSettings.DROPOUT_PULSES)),
                settings.get(EventSettings.STUCK_PERIODS) * periodSeconds,
                transitionMaxSeconds.orElse(settings.get(EventSettings.SLOW_EDGE) / 100 * periodSeconds),
                Math.sqrt(2) * noise / (between * states.thresholds().swing()),
                stepSeconds,
                sigmas);
    }

    /** Number of pulses absent between two active edges. */
    long absent(double distanceSeconds) {
        return distanceSeconds >= missingFromSeconds ? Math.max(1, Math.round(distanceSeconds / periodSeconds) - 1) : 0;
    }

    /**
     * Whether the transition into a pulse is slow beyond doubt. With few samples on it, its duration is only known to be
     * at least the time from the first of them to the last; and for longer than the limit, no sample of it may be one that
     * noise took out of a state.
     */
    boolean slow(Pulse pulse) {
        double seconds = pulse.edgeSeconds;
        double least = pulse.edgeSamples >= SAMPLES_TO_INTERPOLATE ? seconds : (pulse.edgeSamples - 1) * stepSeconds;
        return seconds > slowEdgeSeconds
                && least > slowEdgeSeconds
                && pulse.coreSeconds > slowEdgeSeconds
                && seconds - slowEdgeSeconds > sigmas * edgeNoiseShare * seconds;
    }
}
