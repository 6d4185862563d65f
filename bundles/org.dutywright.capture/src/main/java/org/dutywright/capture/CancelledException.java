// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

/** Thrown when the user asked to stop. Never wrapped, never logged as an error. */
public final class CancelledException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Makes the exception; its message is only for a debugger. */
    public CancelledException() {
        super("cancelled");
    }
}
