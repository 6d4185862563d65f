// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

/**
 * A marked stretch.
 *
 * @param lane index of the lane, -1 for all
 * @param startSeconds where it begins
 * @param endSeconds where it ends
 */
public record Mark(int lane, double startSeconds, double endSeconds) {
    boolean covers(int index) {
        return lane < 0 || lane == index;
    }
}
