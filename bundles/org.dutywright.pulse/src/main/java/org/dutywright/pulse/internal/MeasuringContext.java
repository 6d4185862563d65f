// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.PulseSettings;

/** Puts together what measurements may know of a channel with pulses. */
final class MeasuringContext {
    private MeasuringContext() {}

    static ChannelContext of(ChannelAnalysis channel, PulseSettings settings, double timeBaseRelative) {
        States states = channel.states().orElseThrow();
        double noise = Math.min(states.levels().lowNoise(), states.levels().highNoise());
        return new ChannelContext(
                channel.channel().name(),
                channel.channel().unit(),
                channel.active(),
                states.levels(),
                channel.medianPeriodSeconds().orElse(Double.NaN),
                channel.edges().rise(),
                channel.edges().fall(),
                states.samplesPerIndependent(),
                states.codeStep(),
                Dither.remaining(states.codeStep(), Dither.proven(states.codeStep(), noise)),
                channel.stepSeconds(),
                timeBaseRelative,
                settings);
    }
}
