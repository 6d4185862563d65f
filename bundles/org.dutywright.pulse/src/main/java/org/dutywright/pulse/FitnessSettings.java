// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import org.dutywright.pulse.PulseSettings.Setting;

/** From what on a recording is good, part of {@link PulseSettings#DECLARED}; the lines are {@link Fitness}. */
public final class FitnessSettings {
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

    private FitnessSettings() {}
}
