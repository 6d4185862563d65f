// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import org.eclipse.osgi.util.NLS;

/** The words of the view; they stand in messages.properties. */
final class Messages extends NLS {
    static String nothingOpen;
    static String opening;
    static String measuring;
    static String failed;
    static String cancelled;
    static String cancel;
    static String again;
    static String measuredTab;
    static String checkTab;
    static String quantity;
    static String channel;
    static String cyclesOf;
    static String cyclesDisturbed;
    static String noCycles;
    static String notChecked;
    static String disturbed;
    static String checkTitle;
    static String checkMessage;
    static String checkButton;
    static String sensor;
    static String supply;
    static String supplyHint;
    static String position;
    static String positionUnknown;
    static String positionReleased;
    static String positionPressed;
    static String supplyWrong;
    static String sensorWrong;
    static String textsWrong;
    static String noCapture;
    static String checking;
    static String notCheckedBecause;
    static String catalogueFailed;

    static {
        NLS.initializeMessages("org.dutywright.workbench.pulse.internal.messages", Messages.class);
    }

    private Messages() {}
}
