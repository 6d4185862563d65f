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

    /** All settings in the order in which they are shown. */
    public static final List<Setting> DECLARED = List.of(LOWER_REFERENCE, UPPER_REFERENCE);

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
