// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.pulse.internal.fitness.ChannelFacts;
import org.dutywright.pulse.internal.fitness.DroopFacts;
import org.dutywright.pulse.internal.fitness.PulseFacts;
import org.dutywright.pulse.internal.fitness.PulsedFacts;
import org.dutywright.pulse.internal.fitness.SampleSigns;
import org.dutywright.pulse.internal.fitness.StateZones;

/** Gathers what the rules of fitness may know of a channel, after its cycles were judged. */
final class FactsCollector {
    private FactsCollector() {}

    /** What the samples tell of how they were recorded. */
    static SampleSigns signs(Windows windows, SampleSurvey survey, States states) {
        Thresholds levels = states.thresholds();
        StateZones zones =
                new StateZones(levels.lower(), levels.upper(), survey.min(), survey.max(), states.codeStep());
        return SampleSigns.of(windows.stretches(), zones, survey.codes().distinct());
    }

    static ChannelFacts of(ChannelAnalysis channel) throws IOException {
        Optional<SampleSurvey> survey = channel.survey();
        return new ChannelFacts(
                channel.channel().name(),
                channel.channel().unit(),
                channel.role(),
                channel.status(),
                channel.reason(),
                channel.stepSeconds(),
                survey.isPresent() ? OptionalDouble.of(survey.get().mean()) : OptionalDouble.empty(),
                channel.plan().transitionMaxSeconds(),
                pulsed(channel));
    }

    private static Optional<PulsedFacts> pulsed(ChannelAnalysis channel) throws IOException {
        if (channel.pulses().isEmpty()) {
            return Optional.empty();
        }
        States states = channel.states().orElseThrow();
        return Optional.of(new PulsedFacts(
                states.levels(),
                states.codeStep(),
                channel.shortPulses().orElseThrow(),
                channel.signs().orElseThrow(),
                pulses(channel),
                droop(states.droop())));
    }

    private static DroopFacts droop(Droop droop) {
        return new DroopFacts(droop.low(), droop.high(), droop.isAbove(false, 0) && droop.isAbove(true, 0));
    }

    private static PulseFacts pulses(ChannelAnalysis channel) throws IOException {
        PulseFacts facts = new PulseFacts(
                channel.stepSeconds(), channel.medianPeriodSeconds().orElse(Double.NaN));
        SpillLog.Reader<Pulse> reader = channel.pulses().orElseThrow().reader(1);
        for (Pulse pulse = reader.next(); pulse != null; pulse = reader.next()) {
            if (pulse.startsWithEdge && pulse.edgeSeconds > 0) {
                facts.edge(pulse.edgeSamples);
            }
            if (pulse.startsWithEdge && pulse.endsWithEdge) {
                facts.pulse(pulse.high, pulse.startSeconds, pulse.seconds());
            }
        }
        return facts;
    }
}
