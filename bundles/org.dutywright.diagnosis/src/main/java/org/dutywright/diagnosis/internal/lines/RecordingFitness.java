// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.Fitness;

/** Which findings about the recording bear on which kind of line. */
public final class RecordingFitness {
    /** What a line rests on. */
    public enum Aspect {
        /** State levels and level shifts. */
        LEVELS,
        /** Transition durations. */
        TRANSITIONS,
        /** Periods, duties and travel. */
        TIMING,
        /** Counts of events. */
        EVENTS
    }

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

    // A finding that is not known here bears on everything: that errs towards caution.
    private static boolean touches(String item, Aspect aspect) {
        String word = item.toLowerCase(Locale.ROOT);
        if (word.contains("clip") || word.contains("coupl") || word.contains("resolution")) {
            return aspect == Aspect.LEVELS || aspect == Aspect.TRANSITIONS;
        }
        if (word.contains("edge") || word.contains("transition")) {
            return aspect == Aspect.TRANSITIONS;
        }
        if (word.endsWith("cycles")) {
            return aspect == Aspect.TIMING;
        }
        return !word.contains("gap") || aspect == Aspect.EVENTS;
    }
}
