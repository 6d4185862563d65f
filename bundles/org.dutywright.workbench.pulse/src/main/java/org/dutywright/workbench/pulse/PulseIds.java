// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse;

/** Ids that stand in plugin.xml as well, and the names of widgets. */
public final class PulseIds {
    /** The view of summary and cycles. */
    public static final String VIEW = "org.dutywright.workbench.pulse.view";
    /** The command that compares a capture with a sensor. */
    public static final String CHECK = "org.dutywright.workbench.check";
    /** Parameter of the command: id of the sensor; without it the user is asked. */
    public static final String CHECK_SENSOR = "org.dutywright.workbench.check.sensor";

    /** What the view says while there is nothing to show. */
    public static final String MESSAGE = "pulse.message";
    /** How far the work is. */
    public static final String PROGRESS = "pulse.progress";
    /** Stops the work. */
    public static final String CANCEL = "pulse.cancel";
    /** Starts the work again. */
    public static final String AGAIN = "pulse.again";
    /** The two tabs. */
    public static final String TABS = "pulse.tabs";
    /** Quantities of all channels. */
    public static final String SUMMARY = "pulse.summary";
    /** The channel whose cycles are listed. */
    public static final String CHANNEL = "pulse.channel";
    /** The cycles. */
    public static final String CYCLES = "pulse.cycles";
    /** The verdict of the last check. */
    public static final String VERDICT = "pulse.verdict";
    /** What the last check found. */
    public static final String FOUND = "pulse.found";
    /** The sensors to choose from. */
    public static final String SENSORS = "check.sensors";
    /** The supply voltage. */
    public static final String SUPPLY = "check.supply";
    /** The position of the sensor. */
    public static final String POSITION = "check.position";

    private PulseIds() {}
}
