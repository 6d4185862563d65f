// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;

/** Says what a recording can and cannot carry: one line a rule, those of the whole recording first. */
public final class FitnessLines {
    private static final String VALUES = "values";

    private FitnessLines() {}

    /** The lines of a capture and its channels. */
    public static List<Fitness> of(Capture capture, List<ChannelFacts> channels, PulseSettings settings)
            throws IOException {
        List<Fitness> lines = new ArrayList<>();
        lines.add(Gaps.judge(capture));
        lines.add(SampleRates.judge(capture));
        List<FitnessRule> rules = rules(settings);
        for (ChannelFacts channel : channels) {
            if (channel.role() == Role.PWM) {
                lines.addAll(of(channel, channels, rules));
            }
        }
        return List.copyOf(lines);
    }

    private static List<FitnessRule> rules(PulseSettings settings) {
        return List.of(
                new CycleCount(),
                new SamplesPerPulse(settings),
                new SamplesPerEdge(),
                new LevelResolution(settings),
                new Clipping(),
                new AcCoupling(),
                new BaseLine(),
                new ReducedExport(),
                new StretchedPulses());
    }

    private static List<Fitness> of(ChannelFacts channel, List<ChannelFacts> all, List<FitnessRule> rules) {
        if (channel.status() == Status.UNREADABLE) {
            return List.of(FitnessRule.line(channel, unreadable(channel), Grade.UNFIT, channel.statusReason()));
        }
        Optional<PulsedFacts> pulsed = channel.pulsed();
        return pulsed.isEmpty()
                ? List.of()
                : rules.stream()
                        .map(rule -> rule.judge(channel, pulsed.get(), all))
                        .toList();
    }

    private static String unreadable(ChannelFacts channel) {
        return channel.mean().isPresent() ? SamplesPerPulse.ITEM : VALUES;
    }
}
