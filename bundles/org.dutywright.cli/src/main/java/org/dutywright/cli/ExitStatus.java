// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

/** The exit statuses. Those from 64 on are the values of BSD's sysexits.h. */
public final class ExitStatus {
    /** Done; for a check: conforms. */
    public static final int DONE = 0;
    /** A check: does not conform. A demonstration: another verdict than expected. */
    public static final int DOES_NOT_CONFORM = 1;
    /** A check: inconclusive. */
    public static final int INCONCLUSIVE = 2;
    /** Wrong usage. */
    public static final int USAGE = 64;
    /** Unreadable data. */
    public static final int UNREADABLE = 65;
    /** No such input. */
    public static final int NO_INPUT = 66;
    /** Internal error. */
    public static final int INTERNAL = 70;
    /** Cannot create output. */
    public static final int CANNOT_CREATE = 73;
    /** Cancelled; nothing is half-written. */
    public static final int CANCELLED = 130;

    private ExitStatus() {}
}
