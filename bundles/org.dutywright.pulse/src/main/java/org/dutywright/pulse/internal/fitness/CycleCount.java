// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.List;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.internal.Words;

/** {@code cycles}: numbers rest on whole, undisturbed cycles; without any there are none. */
final class CycleCount implements FitnessRule {
    @Override
    public Fitness judge(ChannelFacts channel, PulsedFacts pulsed, List<ChannelFacts> all) {
        long cycles = pulsed.shortPulses().cycles();
        return cycles == 0
                ? FitnessRule.line(channel, "cycles", Grade.UNFIT, "no whole, undisturbed cycle; record for longer")
                : FitnessRule.line(
                        channel,
                        "cycles",
                        Grade.GOOD,
                        Words.of("%d whole, undisturbed %s", cycles, cycles == 1 ? "cycle" : "cycles"));
    }
}
