// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.List;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.FitnessSettings;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.internal.Words;

/**
 * {@code samplesPerPulse}: with fewer than five samples in the shorter one of pulse and pause a verdict would rest on where
 * the samples happen to lie. Fewer than two are refused before ({@link ShortPulses#unreadable(long, double)}): what looks like a
 * slow carrier may then be a fast one, sampled too seldom.
 */
final class SamplesPerPulse implements FitnessRule {
    static final String ITEM = "samplesPerPulse";

    private final double goodSamples;

    SamplesPerPulse(PulseSettings settings) {
        goodSamples = settings.get(FitnessSettings.POOR_SAMPLES);
    }

    @Override
    public Fitness judge(ChannelFacts channel, PulsedFacts pulsed, List<ChannelFacts> all) {
        ShortPulses found = pulsed.shortPulses();
        if (found.cycles() == 0) {
            return FitnessRule.line(channel, ITEM, Grade.GOOD, "no whole, undisturbed cycle to count samples in");
        }
        Grade grade = found.arePoor() ? Grade.POOR : Grade.GOOD;
        double samples = found.shortestSeconds() / channel.stepSeconds();
        String some = found.coarse() > 0
                ? Words.of(", %d of %d cycles have fewer than %.0f", found.coarse(), found.cycles(), goodSamples)
                : "";
        String advice = grade == Grade.GOOD
                ? ""
                : Words.of("; record at %.0f times the sample rate or more", Math.ceil(goodSamples / samples));
        return FitnessRule.line(
                channel, ITEM, grade, Words.of("the shortest pulse has %.1f samples%s%s", samples, some, advice));
    }
}
