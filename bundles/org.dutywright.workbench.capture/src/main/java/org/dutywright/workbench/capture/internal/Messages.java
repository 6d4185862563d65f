// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import org.eclipse.osgi.util.NLS;

/** What the capture editor says. */
public final class Messages extends NLS {
    public static String opening;
    public static String openingOf;
    public static String cancel;
    public static String again;
    public static String openingCancelled;
    public static String notRead;
    public static String nothingRecorded;
    public static String measuring;
    public static String measuringCancelled;
    public static String measureAgain;
    public static String notMeasured;
    public static String readingAt;
    public static String gapAt;
    public static String cycleChosen;
    public static String hint;
    public static String tracesOf;
    public static String onlyWorkspaceFiles;

    static {
        NLS.initializeMessages("org.dutywright.workbench.capture.internal.messages", Messages.class);
    }

    private Messages() {}
}
