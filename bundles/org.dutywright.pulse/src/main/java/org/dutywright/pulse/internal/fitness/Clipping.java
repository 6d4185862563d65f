// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.internal.Words;

/** {@code clipping}: the range of the recorder ends within a state, whose level lies there or beyond. */
final class Clipping implements FitnessRule {
    private static final String ITEM = "clipping";

    @Override
    public Fitness judge(ChannelFacts channel, PulsedFacts pulsed, List<ChannelFacts> all) {
        List<String> clipped = new ArrayList<>();
        say(clipped, "low", pulsed.signs().lowPile(), channel.unit());
        say(clipped, "high", pulsed.signs().highPile(), channel.unit());
        if (clipped.isEmpty()) {
            return FitnessRule.line(channel, ITEM, Grade.GOOD, "no samples pile up at an end of the recorder's range");
        }
        return FitnessRule.line(
                channel, ITEM, Grade.POOR, String.join(" and ", clipped) + "; choose a larger range or another offset");
    }

    private static void say(List<String> clipped, String state, Optional<Pile> pile, String unit) {
        pile.ifPresent(it -> clipped.add(Words.of(
                "%.0f %% of the samples of the %s state are exactly %.4g %s although there is noise elsewhere, so the range"
                        + " ends there",
                100 * it.share(), state, it.value(), unit)));
    }
}
