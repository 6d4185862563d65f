// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

/**
 * Something wrong at one place of a text file.
 *
 * @param file the file as the user named it
 * @param mark where
 * @param message what, and what to write instead; on one line
 */
public record Problem(String file, Mark mark, String message) {
    /** Writes out the characters of the message that would break its line or steer a terminal. */
    public Problem {
        message = Visible.of(message);
    }

    /** {@code FILE:LINE:COLUMN: message}. */
    @Override
    public String toString() {
        return file + ":" + mark.line() + ":" + mark.column() + ": " + message;
    }
}
