// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.Locale;

/**
 * One aspect of whether a recording can carry a verdict.
 *
 * @param item what was looked at ("signal1.samplesPerPulse")
 * @param grade how it is
 * @param reason the measured fact, and what to set instead where it is not good
 */
public record Fitness(String item, Grade grade, String reason) {
    /** How fit. */
    public enum Grade {
        GOOD,
        /** Numbers are given, a verdict that rests on them is inconclusive. */
        POOR,
        /** No number that rests on it is given. */
        UNFIT;

        /** The word used in files. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
