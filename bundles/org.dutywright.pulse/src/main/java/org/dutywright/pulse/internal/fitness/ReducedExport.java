// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.List;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;

/** {@code minMaxPairs}: an export that was reduced for a screen holds extremes of stretches of time, no samples. */
final class ReducedExport implements FitnessRule {
    private static final String ITEM = "minMaxPairs";

    @Override
    public Fitness judge(ChannelFacts channel, PulsedFacts pulsed, List<ChannelFacts> all) {
        return pulsed.signs().minMaxPairs()
                ? FitnessRule.line(
                        channel,
                        ITEM,
                        Grade.POOR,
                        "the samples are pairs of the smallest and the largest value of a stretch of time, so neither"
                                + " instants nor levels are those of the signal; export all samples instead of a"
                                + " reduced curve")
                : FitnessRule.line(channel, ITEM, Grade.GOOD, "the samples do not come in pairs of extremes");
    }
}
