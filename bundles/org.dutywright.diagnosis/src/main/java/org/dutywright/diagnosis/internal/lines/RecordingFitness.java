// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.Fitness;

/** Which findings about the recording bear on which kind of line. */
public final class RecordingFitness {
    /** What a line rests on. */
    public enum Aspect {
        /** State levels. */
        LEVELS,
        /** Moves of a state level. */
        LEVEL_SHIFTS,
        /** Transition durations. */
        TRANSITIONS,
        /** Frequency: instants on an absolute scale. */
        RATE,
        /** Duties and travel: instants relative to each other. */
        TIMING,
        /** Counts of events. */
        EVENTS
    }

    /** What findings bear on, by a word in the name of their item. */
    private static final Map<String, Set<Aspect>> BEARING = Map.of(
            "clip", EnumSet.of(Aspect.LEVELS, Aspect.LEVEL_SHIFTS, Aspect.TRANSITIONS),
            "coupl", EnumSet.of(Aspect.LEVELS, Aspect.LEVEL_SHIFTS),
            "resolution", EnumSet.of(Aspect.LEVELS, Aspect.LEVEL_SHIFTS, Aspect.TRANSITIONS),
            "probe", EnumSet.of(Aspect.LEVELS),
            "baseline", EnumSet.of(Aspect.LEVELS),
            "edge", EnumSet.of(Aspect.TRANSITIONS),
            "samplerate", EnumSet.of(Aspect.RATE, Aspect.TRANSITIONS),
            "stretched", EnumSet.of(Aspect.TIMING),
            "cycles", EnumSet.of(Aspect.RATE, Aspect.TIMING),
            "gap", EnumSet.of(Aspect.EVENTS));

    private final List<Fitness> findings;
    private final List<String> channelNames;

    private RecordingFitness(List<Fitness> findings, List<String> channelNames) {
        this.findings = findings;
        this.channelNames = channelNames;
    }

    /** The findings of a measured capture. */
    public static RecordingFitness of(CaptureMeasurement measurement) {
        return new RecordingFitness(
                List.copyOf(measurement.fitness()),
                measurement.channels().stream().map(it -> it.channel().name()).toList());
    }

    /**
     * The worst finding that bears on an aspect of a channel, empty if the recording is good for it.
     *
     * @param captureName name of the channel in the capture
     */
    public Optional<Fitness> worst(String captureName, Aspect aspect) {
        Fitness worst = null;
        for (Fitness finding : findings) {
            boolean bears = finding.grade() != Fitness.Grade.GOOD
                    && concerns(finding.item(), captureName)
                    && touches(finding.item(), aspect);
            if (bears && (worst == null || finding.grade().compareTo(worst.grade()) > 0)) {
                worst = finding;
            }
        }
        return Optional.ofNullable(worst);
    }

    /** All findings that are not good and concern a channel or the whole recording. */
    public List<Fitness> against(String captureName) {
        return findings.stream()
                .filter(it -> it.grade() != Fitness.Grade.GOOD && concerns(it.item(), captureName))
                .toList();
    }

    private boolean concerns(String item, String captureName) {
        return item.startsWith(captureName + ".")
                || channelNames.stream().noneMatch(name -> item.startsWith(name + "."));
    }

    /**
     * Whether a finding can only hide events, so that those which were counted stand: a gap hides what happened in it
     * and makes nothing up.
     */
    static boolean onlyHides(Fitness finding) {
        return finding.item().toLowerCase(Locale.ROOT).contains("gap");
    }

    /**
     * Whether a finding takes away levels only, so that pulses can be told all the same: a recording coupled by AC keeps
     * its edges.
     */
    static boolean leavesPulses(Fitness finding) {
        return finding.item().toLowerCase(Locale.ROOT).contains("coupl");
    }

    // A finding that is not known here bears on everything: that errs towards caution.
    private static boolean touches(String item, Aspect aspect) {
        String word = item.substring(item.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        return BEARING.entrySet().stream()
                .filter(it -> word.contains(it.getKey()))
                .findFirst()
                .map(it -> it.getValue().contains(aspect))
                .orElse(true);
    }
}
