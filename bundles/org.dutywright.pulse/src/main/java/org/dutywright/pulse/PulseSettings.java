// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The numbers that steer measuring, by id; immutable. Declared once in {@link #DECLARED}. */
public final class PulseSettings {
    /**
     * One setting: the only place that states its default and range.
     *
     * @param id short name for files and the command line
     * @param label for people
     * @param unit symbol, empty for a plain number
     * @param defaultValue used where nothing is said
     * @param min smallest allowed value
     * @param max largest allowed value
     * @param help what it does, a sentence
     */
    public record Setting(
            String id, String label, String unit, double defaultValue, double min, double max, String help) {}

    /** 10 % reference level. */
    public static final Setting LOWER_REFERENCE = new Setting(
            "reference.lower", "Lower reference level", "%", 10, 1, 49, "Where a transition duration starts or ends.");

    /** 90 % reference level. */
    public static final Setting UPPER_REFERENCE = new Setting(
            "reference.upper", "Upper reference level", "%", 90, 51, 99, "Where a transition duration ends or starts.");

    /** Largest share of samples between the states. */
    public static final Setting MIDDLE_SHARE = new Setting(
            "levels.middle-share",
            "Most samples between the states",
            "%",
            9,
            1,
            30,
            "A signal with more of its samples than this between 40 % and 60 % of its range has no two states: a sine has 12.8 %, a triangle 20 %.");

    /** Smallest swing in standard deviations of noise. */
    public static final Setting SWING_SIGMA = new Setting(
            "levels.swing-sigma",
            "Smallest swing in noise",
            "",
            6,
            2,
            50,
            "Two states are told apart only if they differ by more than this many standard deviations of the noise.");

    /** Smallest swing in code steps. */
    public static final Setting SWING_STEPS = new Setting(
            "levels.swing-steps",
            "Smallest swing in code steps",
            "",
            2,
            1,
            100,
            "Two states are told apart only if they differ by more than this many of the smallest steps that the recording resolves.");

    /** Half-width of the hysteresis. */
    public static final Setting HYSTERESIS_SHARE = new Setting(
            "hysteresis.share",
            "Hysteresis",
            "%",
            10,
            0.1,
            40,
            "Half-width of the hysteresis around the 50 % level, in percent of the swing, where noise asks for no more.");

    /** Half-width of the hysteresis in noise. */
    public static final Setting HYSTERESIS_SIGMA = new Setting(
            "hysteresis.sigma",
            "Hysteresis in noise",
            "",
            4,
            0,
            20,
            "Half-width of the hysteresis in standard deviations of the noise, where that is more.");

    /** Upper limit of the hysteresis. */
    public static final Setting HYSTERESIS_MOST = new Setting(
            "hysteresis.most",
            "Largest hysteresis",
            "%",
            40,
            1,
            49,
            "The half-width of the hysteresis never grows beyond this share of the swing.");

    /** Aberration region in transition durations. */
    public static final Setting ABERRATION = new Setting(
            "levels.aberration",
            "Aberration region",
            "",
            3,
            0,
            100,
            "Samples within so many transition durations of a transition do not count for the state level.");

    /** How many standard uncertainties an event needs. */
    public static final Setting EVENT_SIGMA = new Setting(
            "event.sigma",
            "Certainty of an event",
            "",
            6,
            1,
            50,
            "A value must be beyond a limit of an event, or a sample away from its state, by so many standard uncertainties as well.");

    /** Periods without a transition that make a signal stuck. */
    public static final Setting STUCK_PERIODS = new Setting(
            "stuck.periods",
            "Stuck after",
            "",
            4,
            1,
            1000,
            "A signal without a transition from here to the end of the capture for so many periods is stuck.");

    /** What is high where no other channel tells. */
    public static final Setting STUCK_ALONE = new Setting(
            "stuck.alone",
            "Stuck high above",
            "V",
            1,
            -1000,
            1000,
            "A signal without transitions is stuck high above this level where no other channel tells what high is.");

    /** Absent pulses that make a dropout. */
    public static final Setting DROPOUT_PULSES = new Setting(
            "dropout.pulses",
            "Pulses of a dropout",
            "",
            3,
            2,
            1000,
            "So many pulses absent in a row are a dropout, fewer are missing pulses.");

    /** Distance of active edges in periods that makes a missing pulse. */
    public static final Setting MISSING_FROM = new Setting(
            "missing.from",
            "Missing pulse from",
            "",
            1.5,
            1.1,
            2,
            "A pulse is missing where two active edges lie at least so many periods apart.");

    /** How far a runt leaves its state. */
    public static final Setting RUNT_SHARE = new Setting(
            "runt.share",
            "Runt",
            "%",
            10,
            1,
            45,
            "A runt leaves its state by more than this share of the swing and does not reach the other state.");

    /** How long a runt is outside its state. */
    public static final Setting RUNT_SAMPLES = new Setting(
            "runt.samples",
            "Samples of a runt",
            "",
            2,
            1,
            1000,
            "A runt is outside its state for at least so many samples in a row.");

    /** How long an edge may bounce, in percent of the period. */
    public static final Setting BOUNCE_WINDOW = new Setting(
            "bounce.window",
            "Bounce window",
            "%",
            5,
            0.1,
            20,
            "Further transitions within this share of the period after an edge are its bounce.");

    /** Distance of active edges in periods that makes an extra pulse. */
    public static final Setting EXTRA_WITHIN = new Setting(
            "extra.within",
            "Extra pulse within",
            "",
            0.5,
            0.1,
            0.7,
            "Two active edges less than so many periods apart make an extra pulse.");

    /** How far a period may lie off the median. */
    public static final Setting EXCURSION = new Setting(
            "excursion.share",
            "Period excursion",
            "%",
            5,
            0.1,
            40,
            "A whole cycle further than this share off the median period is a period excursion.");

    /** Change of duty in points that makes a jump. */
    public static final Setting DUTY_JUMP = new Setting(
            "duty-jump.points",
            "Duty jump",
            "%",
            5,
            0.1,
            100,
            "A change of duty by more than so many points from one cycle to the next is a jump where no other channel moves with it.");

    /** How much of a jump another channel must share. */
    public static final Setting DUTY_JUMP_MATCH = new Setting(
            "duty-jump.match",
            "Matching movement",
            "%",
            50,
            1,
            100,
            "Another channel matches a jump if its travel moves the same way by at least this share of it.");

    /** How far the duty of another channel must move where travel is unknown. */
    public static final Setting DUTY_JUMP_POINTS = new Setting(
            "duty-jump.match-points",
            "Matching points",
            "%",
            1,
            0.01,
            100,
            "Where travel is unknown, another channel matches a jump if its duty changes by more than so many points.");

    /** Longest transition in percent of the period. */
    public static final Setting SLOW_EDGE = new Setting(
            "slow-edge.share",
            "Slow edge",
            "%",
            10,
            0.1,
            50,
            "A transition longer than this share of the period is slow where the sensor has no limit of its own.");

    /** How far a state level may move. */
    public static final Setting SHIFT_SHARE = new Setting(
            "level-shift.share",
            "Level shift",
            "%",
            5,
            0.1,
            50,
            "A state level further than this share of the swing off its first value has shifted.");

    /** How many pulses in a row make a level shift. */
    public static final Setting SHIFT_PULSES = new Setting(
            "level-shift.pulses",
            "Pulses of a level shift",
            "",
            3,
            1,
            1000,
            "So many pulses in a row must be off for a level shift.");

    /** Samples in a pulse below which a recording is poor. */
    public static final Setting POOR_SAMPLES = new Setting(
            "fitness.poor-samples",
            "Samples for a good pulse",
            "",
            5,
            2,
            1000,
            "With fewer samples than this in the shortest pulse a recording is poor.");

    /** Code steps in the swing below which a recording is poor. */
    public static final Setting POOR_STEPS = new Setting(
            "fitness.poor-steps",
            "Code steps for a good swing",
            "",
            20,
            2,
            1000,
            "With fewer code steps than this between the states a recording is poor.");

    /** All settings in the order in which they are shown. */
    public static final List<Setting> DECLARED = List.of(
            LOWER_REFERENCE,
            UPPER_REFERENCE,
            MIDDLE_SHARE,
            SWING_SIGMA,
            SWING_STEPS,
            HYSTERESIS_SHARE,
            HYSTERESIS_SIGMA,
            HYSTERESIS_MOST,
            ABERRATION,
            EVENT_SIGMA,
            STUCK_PERIODS,
            STUCK_ALONE,
            DROPOUT_PULSES,
            MISSING_FROM,
            RUNT_SHARE,
            RUNT_SAMPLES,
            BOUNCE_WINDOW,
            EXTRA_WITHIN,
            EXCURSION,
            DUTY_JUMP,
            DUTY_JUMP_MATCH,
            DUTY_JUMP_POINTS,
            SLOW_EDGE,
            SHIFT_SHARE,
            SHIFT_PULSES,
            POOR_SAMPLES,
            POOR_STEPS);

    private final Map<String, Double> values;

    private PulseSettings(Map<String, Double> values) {
        this.values = Map.copyOf(values);
    }

    /** Every setting at its default. */
    public static PulseSettings defaults() {
        return new PulseSettings(Map.of());
    }

    /**
     * A copy with one setting changed.
     *
     * @throws IllegalArgumentException if the value is outside the setting's range
     */
    public PulseSettings with(Setting setting, double value) {
        if (!(value >= setting.min() && value <= setting.max())) {
            throw new IllegalArgumentException(setting.id() + " must lie in " + setting.min() + " to " + setting.max()
                    + " " + setting.unit() + ", not " + value);
        }
        Map<String, Double> changed = new LinkedHashMap<>(values);
        changed.put(setting.id(), value);
        return new PulseSettings(changed);
    }

    /** Value of a setting. */
    public double get(Setting setting) {
        return values.getOrDefault(setting.id(), setting.defaultValue());
    }
}
