// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.PulseSettings;

/** What a stay in one state shows beside its edges: the plateau that tells its level, and excursions out of it. */
final class Stay {
    /**
     * An edge changes by 80 % of the swing over the samples between its reference levels, on its last part by at least half
     * of that rate. What changes at less than 0.3 of it stands at a level.
     */
    private static final double MOST_TREND = 0.24;

    /** What changes by less than this share of the swing stands at a level. */
    private static final double MOST_CHANGE = 0.04;

    private final Plateau plateau;
    private final Margins margins;
    private final TransitionTimer timer;
    private final ExcursionWatch excursions;
    private StateSide side;
    private boolean settled;

    Stay(PulseSink sink, TransitionTimer timer, PulseSettings settings) {
        this.timer = timer;
        plateau = new Plateau(sink);
        margins = new Margins(settings.get(PulseSettings.ABERRATION));
        excursions = new ExcursionWatch(sink, plateau, timer, settings);
    }

    /**
     * The state has begun with a transition that is still under way.
     *
     * @param reached whether the signal came into it by a transition or is near its level
     */
    void begin(StateSide state, boolean reached) {
        side = state;
        settled = false;
        excursions.start(state, reached);
        startPlateau();
    }

    /** The levels of the state have moved. */
    void follow(StateSide state) {
        side = state;
        excursions.follow(state);
    }

    private void startPlateau() {
        plateau.start(
                side.high(), margins.tail(side.high(), timer.usualSamples(!side.high())), side.sign() * side.level());
    }

    /** Whether the transition into the state is over, or was given up. */
    boolean settled() {
        return settled;
    }

    /** The transition into the state is over: the signal came from nowhere, or never reaches the reference level. */
    void settle() {
        settled = true;
    }

    /** The transition reached the ending reference level. */
    void arrived(Pulse pulse, double stepSeconds) {
        if (settled && plateau.stands(MOST_TREND * side.swing() / pulse.edgeSamples, side.mostNoise())) {
            // the level has moved, and only noise took the signal to the reference level
            return;
        }
        if (settled) {
            // it was called settled while it was still on its way: those samples are no plateau
            startPlateau();
        }
        settled = true;
        // of an edge faster than the samples, the one that showed it is the aberration
        if (pulse.edgeSamples > 0 && pulse.edgeSeconds >= 0) {
            double samples = Math.min(pulse.edgeSeconds / stepSeconds, timer.usualSamples(pulse.high));
            long head = margins.head(pulse.high, samples);
            plateau.skip(head);
            pulse.nearEdges = margins.narrow(head, samples);
        }
    }

    /** The first sample of a segment, which told the state. */
    void first(double[] values, int i) {
        if (side.sign() * values[i] <= side.home()) {
            plateau.add(values, i, i + 1);
        }
    }

    /** Samples at home; the one before them was {@code px}, with the sign. */
    void home(ChannelBlocks blocks, int from, int to, double px) throws IOException {
        plateau.cameHome();
        plateau.add(blocks.values(), from, to);
        excursions.quiet(blocks, from, to, px);
    }

    /** A sample anywhere in the state; {@code px} before it and {@code x} itself with the sign. */
    void sample(ChannelBlocks blocks, int i, double px, double x, Pulse pulse) throws IOException {
        double[] values = blocks.values();
        double edgeSamples = timer.usualSamples(!side.high());
        if (timer.underWay() || x <= side.home()) {
            plateau.cameHome();
            plateau.add(values, i, i + 1);
        } else if (x > (margins.outlasts(side.high(), edgeSamples) ? side.farInNoise() : side.farOff())) {
            plateau.wentFar();
        } else {
            // what stays away for half the pulse is no edge any more: the level has moved
            plateau.addAway(values[i], Math.max(edgeSamples, pulse.samples / 2.0), MOST_CHANGE * side.swing());
        }
        if (timer.underWay()) {
            excursions.cancel();
        } else {
            excursions.sample(blocks, i, px, x, pulse);
        }
    }

    /** A transition ends the state. */
    void end(Pulse pulse) {
        plateau.dropAway();
        plateau.finish(pulse);
        margins.pulse(pulse.high, pulse.samples);
    }

    /** The segment ends. */
    void endSegment(Pulse pulse) {
        // what has not come back for long enough may be the start of a transition
        excursions.cancel();
        plateau.finish(pulse);
    }
}
