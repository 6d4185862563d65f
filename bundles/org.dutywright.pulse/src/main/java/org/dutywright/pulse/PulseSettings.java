// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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
            String id, String label, String unit, double defaultValue, double min, double max, String help) {
        /** What it belongs to. */
        public Group group() {
            return Group.of(id);
        }

        /** Whether a value is allowed. */
        public boolean allows(double value) {
            return value >= min && value <= max;
        }
    }

    /** What settings belong to: those of a group are shown together. */
    public enum Group {
        /** The two states of a signal. */
        LEVELS("State levels", "levels."),
        /** Where and when a transition counts. */
        TRANSITIONS("Transitions", "reference.", "hysteresis.", "edge."),
        /** What is known of the recorder. */
        RECORDER("Recorder", "instrument."),
        /** Limits of events. */
        EVENTS("Events"),
        /** What a recording must bring along. */
        FITNESS("Fitness of a recording", "fitness.");

        private final String label;
        // unmodifiable, which the type does not say
        @SuppressWarnings("ImmutableEnumChecker")
        private final List<String> beginnings;

        Group(String label, String... beginnings) {
            this.label = label;
            this.beginnings = List.of(beginnings);
        }

        /** For people. */
        public String label() {
            return label;
        }

        /** The settings of this group, in the order in which they are shown. */
        public List<Setting> settings() {
            return DECLARED.stream().filter(it -> it.group() == this).toList();
        }

        static Group of(String id) {
            for (Group group : values()) {
                if (group.beginnings.stream().anyMatch(id::startsWith)) {
                    return group;
                }
            }
            return EVENTS;
        }
    }

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

    /** Smallest swing of few values. */
    public static final Setting LEAST_SWING = new Setting(
            "levels.least-swing",
            "Smallest swing of few values",
            "V",
            0.5,
            0,
            1000,
            "Where the samples have so few different values that the code step cannot be told, less than this is taken for the"
                    + " flicker of one code. Only for channels in volts.");

    /** Drift of a level from which it is followed. */
    public static final Setting TRACK_FROM = new Setting(
            "levels.track-from",
            "Drift that is followed",
            "%",
            0.5,
            0.01,
            50,
            "Where a state level strays further than this share of the swing from that of the recording, beyond noise, transitions"
                    + " are timed at the levels of the pulses around them.");

    /** Droop within pulses from which it is followed. */
    public static final Setting DROOP_FROM = new Setting(
            "levels.droop-from",
            "Droop that is followed",
            "%",
            1,
            0.01,
            50,
            "Where a level runs towards the other state by more than this share of the swing within its pulses, as AC coupling"
                    + " makes it, transitions are timed at the levels at the ends of the pulses.");

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
            5,
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

    /** Samples on a transition from which its instant is fitted. */
    public static final Setting FIT_SAMPLES = new Setting(
            "edge.fit-samples",
            "Samples for a fitted edge",
            "",
            12,
            10,
            1_000_000,
            "The instant of a transition with so many samples between the reference levels comes from a least-squares fit, of one"
                    + " with fewer from the two samples that straddle the 50 % level.");

    /** Aberration region in transition durations. */
    public static final Setting ABERRATION = new Setting(
            "levels.aberration",
            "Aberration region",
            "",
            3,
            0,
            100,
            "Samples within so many transition durations of a transition do not count for the state level.");

    /** All settings in the order in which they are shown. */
    public static final List<Setting> DECLARED = List.of(
            LOWER_REFERENCE,
            UPPER_REFERENCE,
            MIDDLE_SHARE,
            SWING_SIGMA,
            SWING_STEPS,
            LEAST_SWING,
            TRACK_FROM,
            DROOP_FROM,
            HYSTERESIS_SHARE,
            HYSTERESIS_SIGMA,
            HYSTERESIS_MOST,
            FIT_SAMPLES,
            ABERRATION,
            EventSettings.EVENT_SIGMA,
            EventSettings.STUCK_PERIODS,
            EventSettings.STUCK_ALONE,
            EventSettings.DROPOUT_PULSES,
            EventSettings.MISSING_FROM,
            EventSettings.RUNT_SHARE,
            EventSettings.RUNT_SAMPLES,
            EventSettings.BOUNCE_WINDOW,
            EventSettings.EXTRA_WITHIN,
            EventSettings.EXCURSION,
            EventSettings.DUTY_JUMP,
            EventSettings.DUTY_JUMP_MATCH,
            EventSettings.DUTY_JUMP_POINTS,
            EventSettings.SLOW_EDGE,
            EventSettings.SHIFT_SHARE,
            EventSettings.SHIFT_PULSES,
            RecorderSettings.GAIN_ERROR,
            RecorderSettings.OFFSET_ERROR,
            RecorderSettings.TIME_BASE,
            FitnessSettings.POOR_SAMPLES,
            FitnessSettings.POOR_STEPS);

    private final Map<String, Double> values;

    /** The setting of an id. */
    public static Optional<Setting> find(String id) {
        return DECLARED.stream().filter(it -> it.id().equals(id)).findFirst();
    }

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
        if (!setting.allows(value)) {
            throw new IllegalArgumentException(setting.id() + " must lie between "
                    + SettingText.of(setting, setting.min()) + " and " + SettingText.of(setting, setting.max())
                    + ", not " + SettingText.of(setting, value));
        }
        Map<String, Double> changed = new LinkedHashMap<>(values);
        changed.put(setting.id(), value);
        return new PulseSettings(changed);
    }

    /** The settings whose value is not the default, in the order in which they are shown. */
    public List<Setting> changed() {
        return DECLARED.stream().filter(it -> get(it) != it.defaultValue()).toList();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PulseSettings that && DECLARED.stream().allMatch(it -> get(it) == that.get(it));
    }

    @Override
    public int hashCode() {
        return changed().stream()
                .mapToInt(it -> 31 * it.id().hashCode() + Double.hashCode(get(it)))
                .sum();
    }

    /** Value of a setting. */
    public double get(Setting setting) {
        return values.getOrDefault(setting.id(), setting.defaultValue());
    }
}
