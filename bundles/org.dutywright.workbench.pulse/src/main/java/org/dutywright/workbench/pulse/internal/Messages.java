// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import org.eclipse.osgi.util.NLS;

/** The words of the view; they stand in messages.properties. */
public final class Messages extends NLS {
    public static String nothingOpen;
    public static String opening;
    public static String measuring;
    public static String failed;
    public static String cancelled;
    public static String cancel;
    public static String again;
    public static String measuredTab;
    public static String checkTab;
    public static String quantity;
    public static String channel;
    public static String cyclesOf;
    public static String cyclesDisturbed;
    public static String noCycles;
    public static String notChecked;
    public static String disturbed;
    public static String checkTitle;
    public static String checkMessage;
    public static String checkButton;
    public static String sensor;
    public static String supply;
    public static String supplyHint;
    public static String position;
    public static String positionUnknown;
    public static String positionReleased;
    public static String positionPressed;
    public static String supplyWrong;
    public static String sensorWrong;
    public static String textsWrong;
    public static String noCapture;
    public static String checking;
    public static String notCheckedBecause;
    public static String catalogueFailed;

    static {
        NLS.initializeMessages("org.dutywright.workbench.pulse.internal.messages", Messages.class);
    }

    private Messages() {}
}
