// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

import java.util.OptionalInt;

/**
 * Lanes of the same height, one above the other: the first channel on top. Each has room for flags at its upper edge.
 *
 * @param heightPixels height of the plot
 * @param count number of lanes, at least 1
 * @param headPixels room for flags
 */
public record LaneLayout(int heightPixels, int count, int headPixels) {
    private static final int FOOT_PIXELS = 8;
    private static final int SMALLEST_INNER_PIXELS = 4;

    /**
     * Values at the lower and the upper edge of the whole plot.
     *
     * @param lower value at the lower edge
     * @param upper value at the upper edge
     */
    public record AxisRange(double lower, double upper) {}

    /** Upper edge of a lane. */
    public int top(int lane) {
        return (int) ((long) heightPixels * lane / count);
    }

    /** Lower edge of a lane. */
    public int bottom(int lane) {
        return top(lane + 1);
    }

    /** Where the largest value is drawn. */
    public int highPixel(int lane) {
        return top(lane) + headPixels;
    }

    /** Where the smallest value is drawn. */
    public int lowPixel(int lane) {
        return Math.max(highPixel(lane) + SMALLEST_INNER_PIXELS, bottom(lane) - FOOT_PIXELS);
    }

    /** The lane at a height of the plot, empty outside. */
    public OptionalInt laneAt(int y) {
        if (y < 0 || y >= heightPixels) {
            return OptionalInt.empty();
        }
        int lane = 0;
        while (lane + 1 < count && y >= bottom(lane)) {
            lane++;
        }
        return OptionalInt.of(lane);
    }

    /** The height at which a value of a lane is drawn. */
    public int pixelOf(int lane, Lane values, double value) {
        double share = (value - values.low()) / (values.high() - values.low());
        return (int) Math.round(lowPixel(lane) + share * (highPixel(lane) - lowPixel(lane)));
    }

    /** The range that an axis over the whole plot must have for the values of a lane to lie in that lane. */
    public AxisRange axisRange(int lane, Lane values) {
        double perPixel = (values.high() - values.low()) / (lowPixel(lane) - highPixel(lane));
        double upper = values.high() + highPixel(lane) * perPixel;
        return new AxisRange(upper - Math.max(1, heightPixels) * perPixel, upper);
    }
}
