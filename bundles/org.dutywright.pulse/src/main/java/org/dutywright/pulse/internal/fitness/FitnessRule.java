// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.List;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;

/** Says one thing that a recording of pulses can or cannot carry. Rules are stateless. */
interface FitnessRule {
    /**
     * Judges a channel with pulses.
     *
     * @param channel the channel
     * @param pulsed what its pulses tell
     * @param all all channels of the recording
     */
    Fitness judge(ChannelFacts channel, PulsedFacts pulsed, List<ChannelFacts> all);

    /** A line on a channel. */
    static Fitness line(ChannelFacts channel, String aspect, Grade grade, String reason) {
        return new Fitness(channel.name() + "." + aspect, grade, reason);
    }
}
