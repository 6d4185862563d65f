// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Transition;

/**
 * How far an error of the state levels moves the two edges of a pulse against each other: the 50 % level is then off by
 * half of each level's error, and edges that take time are crossed earlier or later.
 */
final class PulseWidth {
    private final ChannelContext channel;
    private final Moments rise = new Moments();
    private final Moments fall = new Moments();

    PulseWidth(ChannelContext channel) {
        this.channel = channel;
    }

    void transition(Transition transition, boolean disturbed) {
        // Shorter than the samples tell, edges are crossed at once, whatever the level.
        if (!disturbed && transition.durationSeconds() >= 0) {
            (transition.rising() ? rise : fall).add(transition.samplesOnEdge() == 0 ? 0 : transition.durationSeconds());
        }
    }

    /** Standard uncertainty of a pulse's duration from the levels, the same for all pulses. */
    double uLevelSeconds() {
        StateLevels levels = channel.levels();
        double uMiddle = Math.hypot(levels.low().u(), levels.high().u()) / 2;
        double share = (channel.settings().get(PulseSettings.UPPER_REFERENCE)
                        - channel.settings().get(PulseSettings.LOWER_REFERENCE))
                / 100;
        double edgeSeconds = (rise.count() > 0 ? rise.mean() : 0) + (fall.count() > 0 ? fall.mean() : 0);
        return uMiddle * edgeSeconds / (share * levels.swing());
    }
}
