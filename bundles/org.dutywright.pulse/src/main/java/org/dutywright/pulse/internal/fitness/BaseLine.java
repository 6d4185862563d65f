// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.List;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.internal.Words;

/**
 * {@code baseLine}: a sensor that pulls to ground cannot go below it, so a low level below the recorded ground line, or
 * below 0 V where none was recorded, is the recorder's. A low level above may be a fault of the ground; but one channel
 * that lies above another one of the same swing is off by itself.
 */
final class BaseLine implements FitnessRule {
    private static final String ITEM = "baseLine";
    private static final String VOLT = "V";
    private static final double MOST_BELOW = 0.05;
    private static final double MOST_ABOVE_OTHERS = 0.25;
    private static final double SAME_SWING = 0.1;

    @Override
    public Fitness judge(ChannelFacts channel, PulsedFacts pulsed, List<ChannelFacts> all) {
        double low = pulsed.levels().low().value();
        double swing = pulsed.levels().swing();
        double ground = all.stream()
                .filter(it -> it.role() == Role.GROUND && it.mean().isPresent())
                .mapToDouble(it -> it.mean().getAsDouble())
                .average()
                .orElse(0);
        String fact = Words.of("the low level is %.4g %s", low, channel.unit());
        if (!channel.unit().equals(VOLT) || AcCoupling.isCoupled(channel, pulsed)) {
            return FitnessRule.line(channel, ITEM, Grade.GOOD, fact);
        }
        if (low - ground < -MOST_BELOW * swing) {
            String line = ground == 0 ? "0 V" : Words.of("the recorded ground of %.4g V", ground);
            return FitnessRule.line(
                    channel,
                    ITEM,
                    Grade.POOR,
                    fact
                            + Words.of(
                                    ", %.0f %% of the swing below %s; couple the channel by DC and set its offset to zero",
                                    100 * (ground - low) / swing, line));
        }
        double others = all.stream()
                .filter(it -> !it.name().equals(channel.name()) && it.unit().equals(VOLT))
                .flatMap(it -> it.pulsed().stream())
                .map(PulsedFacts::levels)
                .filter(it -> Math.abs(it.swing() - swing) <= SAME_SWING * swing)
                .mapToDouble(it -> it.low().value())
                .min()
                .orElse(low);
        return low - others > MOST_ABOVE_OTHERS * swing
                ? FitnessRule.line(
                        channel,
                        ITEM,
                        Grade.POOR,
                        fact
                                + Words.of(
                                        ", that of another channel with the same swing %.4g V; set the offset of the channel to"
                                                + " zero and clip it to the same ground",
                                        others))
                : FitnessRule.line(channel, ITEM, Grade.GOOD, fact);
    }
}
