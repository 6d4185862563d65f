// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.List;
import java.util.OptionalDouble;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.internal.Words;

/**
 * {@code samplesPerEdge}: a transition with fewer than two samples between its reference levels may be anything from
 * instant to two sample steps long, for straight lines between samples show 0.8 to 1.6 steps whatever it was. That is
 * enough to judge a limit of two steps or more, and too little to judge a shorter one.
 */
final class SamplesPerEdge implements FitnessRule {
    private static final String ITEM = "samplesPerEdge";
    private static final int RESOLVED = 2;

    @Override
    public Fitness judge(ChannelFacts channel, PulsedFacts pulsed, List<ChannelFacts> all) {
        PulseFacts pulses = pulsed.pulses();
        if (pulses.edges() == 0) {
            return FitnessRule.line(channel, ITEM, Grade.GOOD, "no transition passed both reference levels");
        }
        int samples = pulses.medianEdgeSamples();
        String fact =
                Words.of("half of the transitions have %d samples or fewer between their reference levels", samples);
        if (samples >= RESOLVED) {
            return FitnessRule.line(channel, ITEM, Grade.GOOD, fact);
        }
        double longest = RESOLVED * channel.stepSeconds();
        OptionalDouble limit = channel.transitionMaxSeconds();
        if (limit.isEmpty() || longest <= limit.getAsDouble()) {
            return FitnessRule.line(
                    channel,
                    ITEM,
                    Grade.GOOD,
                    fact + Words.of(", so that they are only known to be shorter than %s", Words.seconds(longest)));
        }
        return FitnessRule.line(
                channel,
                ITEM,
                Grade.POOR,
                fact
                        + Words.of(
                                ", too few to judge a limit of %s; record at %s or more",
                                Words.seconds(limit.getAsDouble()), Words.rate(RESOLVED / limit.getAsDouble())));
    }
}
