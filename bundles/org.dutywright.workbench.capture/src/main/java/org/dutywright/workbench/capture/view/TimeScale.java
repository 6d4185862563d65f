// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

/**
 * Instants and pixels of a plot.
 *
 * @param shown the window of time
 * @param widthPixels width of the plot, at least 1
 */
public record TimeScale(TimeWindow shown, int widthPixels) {
    /** Refuses a plot without width. */
    public TimeScale {
        if (widthPixels < 1) {
            throw new IllegalArgumentException(widthPixels + " pixels");
        }
    }

    /** The instant at the left edge of a pixel. */
    public double secondsAt(double pixel) {
        return shown.startSeconds() + pixel / widthPixels * shown.spanSeconds();
    }

    /** The pixel of an instant; far outside the plot one just outside of it, so that nothing overflows. */
    public int pixelAt(double seconds) {
        double pixel = (seconds - shown.startSeconds()) / shown.spanSeconds() * widthPixels;
        return (int) Math.floor(Math.clamp(pixel, -widthPixels, 2.0 * widthPixels));
    }

    /** Length of a pixel. */
    public double secondsPerPixel() {
        return shown.spanSeconds() / widthPixels;
    }
}
