// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

/**
 * A stretch of time of a capture.
 *
 * @param fromSeconds where it begins
 * @param toSeconds where it ends, not before
 */
record Span(double fromSeconds, double toSeconds) {
    double lengthSeconds() {
        return toSeconds - fromSeconds;
    }
}
