// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

/**
 * What is known of a channel before any of it is drawn.
 *
 * @param name name of the channel
 * @param unit symbol of its unit, may be empty
 * @param low smallest value of the capture, or a little less where all are the same
 * @param high largest value, above {@code low}
 */
public record Lane(String name, String unit, double low, double high) {
    /** Share by which a channel with one value only is widened, so that its line has a place in its lane. */
    private static final double WIDENING = 0.1;

    /** A lane for values between these two, which may be the same. */
    public static Lane of(String name, String unit, double smallest, double largest) {
        if (smallest < largest) {
            return new Lane(name, unit, smallest, largest);
        }
        double room = smallest == 0 ? 1 : Math.abs(smallest) * WIDENING;
        return new Lane(name, unit, smallest - room, smallest + room);
    }
}
