// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

/** A text that is not a quantity of the wanted kind. Its message says what to write. */
public final class UnitException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes the exception. */
    public UnitException(String message) {
        super(message);
    }
}
