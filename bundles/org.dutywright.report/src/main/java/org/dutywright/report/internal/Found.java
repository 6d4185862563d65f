// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Uncertain;

/** Looks up the built-in results of a channel by their ids. */
public final class Found {
    /** Mean frequency and its spread. */
    public static final String FREQUENCY = "frequency";
    /** Pulse period. */
    public static final String PERIOD = "period";
    /** Duty of the active level. */
    public static final String DUTY = "duty";
    /** Time in the active level. */
    public static final String PULSE_DURATION = "pulse-duration";
    /** Median 10-90 % time of rising transitions. */
    public static final String RISE = "transition.rise";
    /** Median 90-10 % time of falling transitions. */
    public static final String FALL = "transition.fall";
    /** Time between two pulses. */
    public static final String PULSE_SEPARATION = "pulse-separation";
    /** Duty at the thresholds of the module's input. */
    public static final String INPUT_DUTY = "input-duty";
    /** Time in the active level at these thresholds. */
    public static final String INPUT_PULSE_DURATION = "input-pulse-duration";
    /** How far the signal goes beyond the high state after rising. */
    public static final String OVERSHOOT_RISE = "overshoot.rise";
    /** How far it goes beyond the low state after falling. */
    public static final String OVERSHOOT_FALL = "overshoot.fall";
    /** How far it is beyond the low state before rising. */
    public static final String UNDERSHOOT_RISE = "undershoot.rise";
    /** How far it is beyond the high state before falling. */
    public static final String UNDERSHOOT_FALL = "undershoot.fall";
    /** Average over whole cycles. */
    public static final String MEAN_VOLTAGE = "mean-voltage";
    /** Root mean square over whole cycles. */
    public static final String RMS_VOLTAGE = "rms-voltage";
    /** Root mean square of the period jitter. */
    public static final String JITTER_RMS = "period-jitter.rms";
    /** Range of the period jitter. */
    public static final String JITTER_PEAK_TO_PEAK = "period-jitter.peak-to-peak";

    private static final List<String> BUILT_IN = List.of(
            FREQUENCY,
            PERIOD,
            DUTY,
            INPUT_DUTY,
            PULSE_DURATION,
            INPUT_PULSE_DURATION,
            PULSE_SEPARATION,
            RISE,
            FALL,
            OVERSHOOT_RISE,
            OVERSHOOT_FALL,
            UNDERSHOOT_RISE,
            UNDERSHOOT_FALL,
            MEAN_VOLTAGE,
            RMS_VOLTAGE,
            JITTER_RMS,
            JITTER_PEAK_TO_PEAK);

    private Found() {}

    /** Whether the result has a field of its own in the files. */
    public static boolean isBuiltIn(String id) {
        return BUILT_IN.contains(id);
    }

    /** The statistic of a result, empty if it has none. */
    public static Optional<Statistic> statistic(ChannelMeasurement channel, String id) {
        return outcome(channel, id) instanceof Outcome.OfCycles found
                ? Optional.of(found.statistic())
                : Optional.empty();
    }

    /** The single value of a result, empty if it has none. */
    public static Optional<Uncertain> single(ChannelMeasurement channel, String id) {
        return outcome(channel, id) instanceof Outcome.Single found ? Optional.of(found.value()) : Optional.empty();
    }

    /** Why a result has no number, empty if it has one or was not asked for. */
    public static Optional<String> reason(ChannelMeasurement channel, String id) {
        return outcome(channel, id) instanceof Outcome.Absent absent ? Optional.of(absent.reason()) : Optional.empty();
    }

    /** The results that are built in, in the order of their fields. */
    public static List<Result> builtIn(Map<String, Result> results) {
        return BUILT_IN.stream().filter(results::containsKey).map(results::get).toList();
    }

    /** The results that are not built in, in order. */
    public static List<Result> others(Map<String, Result> results) {
        return results.values().stream()
                .filter(result -> !isBuiltIn(result.id()))
                .toList();
    }

    private static Outcome outcome(ChannelMeasurement channel, String id) {
        Result result = channel.results().get(id);
        return result == null ? new Outcome.Absent("not measured") : result.outcome();
    }
}
