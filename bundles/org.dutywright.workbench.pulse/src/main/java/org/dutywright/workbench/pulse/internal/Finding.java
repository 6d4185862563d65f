// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.Optional;

/**
 * One thing that a check found at one place of a capture.
 *
 * @param failed whether it fails; else it could not be decided
 * @param item what was judged
 * @param message for people, one line
 * @param place where
 */
record Finding(boolean failed, String item, String message, Place place) {
    /**
     * A place of a capture.
     *
     * @param channel name in the capture, empty for the whole capture
     * @param span when, empty for all of it
     */
    record Place(String channel, Optional<Span> span) {}

    /** A stretch of time in seconds of the capture. */
    record Span(double startSeconds, double endSeconds) {}
}
