// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.internal.Words;

/**
 * {@code coupling}: behind a capacitor both states run towards each other within their pulses, and the mean of the recording
 * is near zero whatever it was. Edges, and what rests on them, stay right; levels are gone. An overcompensated probe
 * makes both states run as well, but leaves the mean.
 */
public final class AcCoupling implements FitnessRule {
    private static final String ITEM = "coupling";
    /** A single pole of 0.2 Hz lets 200 Hz of 30 % duty droop by so much of the swing (closed form: 2 pi f T D (1 - D)). */
    private static final double LEAST = 0.001;

    private static final double LARGEST_MEAN = 0.1;
    /** Results at levels that were given in volts. */
    private static final String AT_GIVEN_LEVELS = "input-";

    AcCoupling() {}

    @Override
    public Fitness judge(ChannelFacts channel, PulsedFacts pulsed, List<ChannelFacts> all) {
        if (!isCoupled(channel, pulsed)) {
            return FitnessRule.line(channel, ITEM, Grade.GOOD, "the levels do not run towards each other");
        }
        return FitnessRule.line(
                channel,
                ITEM,
                Grade.UNFIT,
                Words.of(
                        "within pulses the low level rises by %.2g %% of the swing and the high level falls by %.2g %%, and the"
                                + " mean is near zero: the input is coupled by AC, so levels and mean voltage are lost;"
                                + " set it to DC",
                        100 * pulsed.droop().low(), 100 * pulsed.droop().high()));
    }

    static boolean isCoupled(ChannelFacts channel, PulsedFacts pulsed) {
        double swing = pulsed.levels().swing();
        return pulsed.droop().sure()
                && Math.min(pulsed.droop().low(), pulsed.droop().high()) > LEAST
                && pulsed.levels().low().value() < 0
                && Math.abs(channel.mean().orElse(swing)) < LARGEST_MEAN * swing;
    }

    /** Why a channel has no levels, empty if it has. */
    public static Optional<String> reason(String channel, List<Fitness> fitness) {
        return fitness.stream()
                .filter(it -> it.grade() == Grade.UNFIT && it.item().equals(channel + "." + ITEM))
                .map(Fitness::reason)
                .findFirst();
    }

    /** Results without those that rest on levels: all in the unit of the samples, and those at levels that were given. */
    public static Map<String, Result> withoutLevels(Map<String, Result> results, String unit, String reason) {
        Map<String, Result> kept = new LinkedHashMap<>();
        results.forEach((id, result) -> kept.put(
                id,
                result.unit().equals(unit) || id.startsWith(AT_GIVEN_LEVELS)
                        ? new Result(id, result.label(), result.unit(), new Outcome.Absent(reason))
                        : result));
        return kept;
    }
}
