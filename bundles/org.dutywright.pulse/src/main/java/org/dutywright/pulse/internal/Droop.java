// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * How far the level of each state runs towards the other one within a pulse, as AC coupling makes it. The trend of each
 * pulse is the least-squares line through its plateau, times its length.
 *
 * @param low mean over the pulses of the low state, as a share of the swing; negative where it runs away from the other
 * @param high the same of the high state
 * @param uLow standard uncertainty of low, from the scatter of the pulses
 * @param uHigh standard uncertainty of high
 */
record Droop(double low, double high, double uLow, double uHigh) {
    /** Nothing is known to droop. */
    static final Droop NONE = new Droop(0, 0, 0, 0);

    private static final double SIGMAS = 6;

    /** Whether a state droops by more than a share of the swing beyond doubt. */
    boolean isAbove(boolean highState, double share) {
        double droop = highState ? high : low;
        double u = highState ? uHigh : uLow;
        return droop > share && droop > SIGMAS * u;
    }

    /** The larger droop, 0 if neither state runs towards the other. */
    double largest() {
        return Math.max(0, Math.max(low, high));
    }
}
