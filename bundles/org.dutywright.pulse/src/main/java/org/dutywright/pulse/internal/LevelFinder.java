// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.Optional;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.internal.StretchLevels.Pair;

/**
 * Tells whether a channel has two states, and their levels (IEEE Std 181-2011: group the samples by state, then take
 * the mean of each group). The histogram separates the states; the level of each is the mean of its samples outside
 * transitions and their aberrations, or their shorth where they are skewed. Reads the channel a few times, in constant
 * memory.
 */
final class LevelFinder {
    /** Share of the samples cut off at each end of the range, where spikes and overshoot are. */
    private static final double CUT = 0.001;

    /** States that only the full range shows are believed from so many transitions on: fewer may be a lone spike. */
    private static final int LEAST_TRANSITIONS = 4;

    /** With noise below this share of the step, few values are those of an ideal signal, not codes of a recorder. */
    private static final double NOISY = 0.1;

    private final ChannelSource source;
    private final SampleSurvey survey;
    private final PulseSettings settings;
    private String reason = "";

    LevelFinder(ChannelSource source, SampleSurvey survey, PulseSettings settings) {
        this.source = source;
        this.survey = survey;
        this.settings = settings;
    }

    /** Why there are no two states, after {@link #find} found none: a clause without a full stop. */
    String reason() {
        return reason;
    }

    /** The two states, empty if there are none. */
    Optional<States> find() throws IOException {
        if (!(survey.range() > 0)) {
            reason = "all samples are equal";
            return Optional.empty();
        }
        Histogram histogram = Histogram.of(source.open(), survey);
        Optional<States> states = within(histogram, histogram.quantile(CUT), histogram.quantile(1 - CUT), 1);
        if (states.isPresent()) {
            return states;
        }
        String why = reason;
        states = within(histogram, survey.min(), survey.max(), LEAST_TRANSITIONS);
        if (states.isEmpty()) {
            states = byStretches(histogram);
        }
        if (states.isEmpty()) {
            reason = why;
        }
        return states;
    }

    private Optional<States> within(Histogram histogram, double from, double to, int leastTransitions)
            throws IOException {
        Optional<Pair> pair = pair(histogram, from, to, 0);
        if (pair.isEmpty()) {
            return Optional.empty();
        }
        Pair found = pair.orElseThrow();
        Thresholds provisional = Thresholds.of(found.low(), found.high(), found.noise(), found.noise(), settings);
        return refined(LevelTrack.constant(provisional, settings), found.noise(), leastTransitions);
    }

    private Optional<States> byStretches(Histogram histogram) throws IOException {
        Optional<StretchLevels> levels = StretchLevels.of(
                histogram, (stretch, first) -> pair(stretch, stretch.quantile(CUT), stretch.quantile(1 - CUT), first));
        if (levels.isEmpty()) {
            return Optional.empty();
        }
        try (LevelTrack track = levels.orElseThrow().track(settings)) {
            return refined(track, levels.orElseThrow().noise(), LEAST_TRANSITIONS);
        }
    }

    /** The provisional states of some samples, from what lies above and below the middle of their range. */
    private Optional<Pair> pair(Histogram histogram, double from, double to, long firstSample) {
        if (!(to > from)) {
            reason = "all samples but a few are equal";
            return Optional.empty();
        }
        double middle = from + (to - from) / 2;
        double low = histogram.medianBelow(middle);
        double high = histogram.medianAbove(middle);
        // differences of neighbours are noise unless every few samples there is an edge
        double noise = Math.min(
                survey.noise(),
                Math.max(histogram.spreadAround(middle), survey.codes().rounding()));
        if (!separate(low, high, noise, survey.codes().known(false))) {
            return Optional.empty();
        }
        double share = histogram.shareBetween(from + 0.4 * (to - from), from + 0.6 * (to - from));
        if (share * 100 > settings.get(PulseSettings.MIDDLE_SHARE)) {
            reason = Words.of(
                    "%.0f %% of the samples lie in the middle fifth of the range, so there are no two states",
                    100 * share);
            return Optional.empty();
        }
        return Optional.of(new Pair(firstSample, low, high, noise));
    }

    private Optional<States> refined(LevelTrack track, double noise, int leastTransitions) throws IOException {
        Optional<States> states = pass(track, noise, leastTransitions);
        if (states.isEmpty() || !states.orElseThrow().track().moves()) {
            return states;
        }
        // with the levels of the moment more of each pulse counts
        try (LevelTrack first = states.orElseThrow().track()) {
            return pass(first, noise, leastTransitions);
        }
    }

    private Optional<States> pass(LevelTrack track, double noise, int leastTransitions) throws IOException {
        try (LevelTally tally =
                new LevelTally(track.whole().low(), track.whole().high())) {
            new EdgeFinder(track, settings, tally).run(source.open());
            if (tally.transitions() < leastTransitions) {
                reason = "there are no transitions between two states";
                return Optional.empty();
            }
            Optional<States> states = valued(tally, noise);
            if (states.isEmpty()) {
                return states;
            }
            States found = states.orElseThrow();
            return Optional.of(found.along(LevelTrack.of(tally.log(), found, settings)));
        }
    }

    private boolean separate(double low, double high, double noise, double codeStep) {
        double swing = high - low;
        boolean volts = source.capture().channels().get(source.channel()).unit().equals("V");
        if (volts && survey.codes().few() && swing < settings.get(PulseSettings.LEAST_SWING)) {
            reason = Words.of(
                    "%d different values no further than %.4g V apart may be one code step",
                    survey.codes().distinct(), survey.range());
            return false;
        }
        if (!(swing > settings.get(PulseSettings.SWING_SIGMA) * noise)) {
            reason = Words.of("the swing is not above %.0f times the noise", settings.get(PulseSettings.SWING_SIGMA));
            return false;
        }
        if (!(swing > settings.get(PulseSettings.SWING_STEPS) * codeStep)) {
            reason = Words.of("the swing is not above %.0f code steps", settings.get(PulseSettings.SWING_STEPS));
            return false;
        }
        return true;
    }

    private Optional<States> valued(LevelTally tally, double noise) {
        double lowNoise = tally.low().noise(noise);
        double highNoise = tally.high().noise(noise);
        boolean noisy = Math.max(lowNoise, highNoise) > NOISY * survey.codes().step();
        double codeStep = survey.codes().known(noisy);
        double low = tally.low().level(lowNoise, codeStep);
        double high = tally.high().level(highNoise, codeStep);
        if (!separate(low, high, Math.max(lowNoise, highNoise), codeStep)) {
            return Optional.empty();
        }
        StateLevels levels = new StateLevels(
                tally.low().level(lowNoise, codeStep, high - low, tally.edgeSamples(false)),
                tally.high().level(highNoise, codeStep, high - low, tally.edgeSamples(true)),
                lowNoise,
                highNoise);
        Thresholds thresholds = Thresholds.of(low, high, lowNoise, highNoise, settings);
        return Optional.of(new States(
                levels,
                thresholds,
                codeStep,
                tally.transitions(),
                tally.periodGuessSeconds(),
                tally.low().firstLevel(),
                tally.high().firstLevel(),
                tally.low().uFirstLevel(lowNoise),
                tally.high().uFirstLevel(highNoise),
                tally.droop(),
                LevelTrack.constant(thresholds, settings),
                Math.max(
                        tally.low().samplesPerIndependent(lowNoise),
                        tally.high().samplesPerIndependent(highNoise)),
                Math.min(tally.low().medianSamples(), tally.high().medianSamples())));
    }
}
