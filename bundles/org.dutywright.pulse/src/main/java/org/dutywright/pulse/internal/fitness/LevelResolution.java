// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.List;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.FitnessSettings;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.internal.Words;

/** {@code levelResolution}: with few code steps in the swing a level is only known to a large part of it. */
final class LevelResolution implements FitnessRule {
    private static final String ITEM = "levelResolution";

    private final double goodSteps;

    LevelResolution(PulseSettings settings) {
        goodSteps = settings.get(FitnessSettings.POOR_STEPS);
    }

    @Override
    public Fitness judge(ChannelFacts channel, PulsedFacts pulsed, List<ChannelFacts> all) {
        if (!(pulsed.codeStep() > 0)) {
            return FitnessRule.line(channel, ITEM, Grade.GOOD, "too few different values to tell the code step");
        }
        double steps = pulsed.levels().swing() / pulsed.codeStep();
        boolean poor = steps < goodSteps;
        return FitnessRule.line(
                channel,
                ITEM,
                poor ? Grade.POOR : Grade.GOOD,
                Words.of(
                        "the swing has %.3g code steps of %.3g %s%s",
                        steps, pulsed.codeStep(), channel.unit(), poor ? "; choose a smaller range" : ""));
    }
}
