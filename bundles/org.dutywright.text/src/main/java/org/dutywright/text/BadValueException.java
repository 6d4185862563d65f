// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

/** A single value that does not mean what is wanted at its place. Its message says what to write. */
public final class BadValueException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes the exception. */
    public BadValueException(String message) {
        super(message);
    }
}
