// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

/**
 * The part of a capture that is shown. It never leaves the capture, and never gets so short that neighbouring instants
 * could not be told apart.
 *
 * @param whole the capture from its first sample to its last
 * @param shown the part that is shown
 * @param smallestSpanSeconds how short it may become
 */
public record TimeView(TimeWindow whole, TimeWindow shown, double smallestSpanSeconds) {
    private static final double SMALLEST_STEPS = 8;
    // doubles carry about 15.9 digits; this leaves three of them to tell the pixels of a window apart
    private static final double SMALLEST_SHARE = 1e-12;
    private static final double ROOM_AROUND_SPAN = 10;

    /** Shows the whole capture. */
    public static TimeView of(TimeWindow whole, double stepSeconds) {
        double largest = Math.max(Math.abs(whole.startSeconds()), Math.abs(whole.endSeconds()));
        double smallest = Math.max(SMALLEST_STEPS * stepSeconds, SMALLEST_SHARE * largest);
        return new TimeView(whole, whole, Math.min(smallest, whole.spanSeconds()));
    }

    /**
     * Magnifies around an instant, which keeps its place in the window as long as the capture reaches that far.
     *
     * @param factor above 1 shows less and larger, below 1 shows more
     */
    public TimeView zoomed(double atSeconds, double factor) {
        double span = Math.clamp(shown.spanSeconds() / factor, smallestSpanSeconds, whole.spanSeconds());
        double share = (atSeconds - shown.startSeconds()) / shown.spanSeconds();
        return showing(atSeconds - share * span, span);
    }

    /** Moves the window by a share of its length, towards later instants where positive. */
    public TimeView panned(double share) {
        return showing(shown.startSeconds() + share * shown.spanSeconds(), shown.spanSeconds());
    }

    /** Moves the window so that it begins at that instant, or as near to it as the capture reaches. */
    public TimeView movedTo(double startSeconds) {
        return showing(startSeconds, shown.spanSeconds());
    }

    /** Shows the whole capture again. */
    public TimeView fitted() {
        return new TimeView(whole, whole, smallestSpanSeconds);
    }

    /** Moves the window to a stretch that it does not touch; one that is partly seen already stays where it is. */
    public TimeView revealing(double fromSeconds, double toSeconds) {
        if (shown.touches(fromSeconds, toSeconds)) {
            return this;
        }
        return showing((fromSeconds + toSeconds - shown.spanSeconds()) / 2, shown.spanSeconds());
    }

    /** Shows a stretch with as much around it that its surroundings can be judged. */
    public TimeView closeTo(double fromSeconds, double toSeconds) {
        double wanted = (toSeconds - fromSeconds) * ROOM_AROUND_SPAN;
        double span = Math.clamp(wanted, Math.min(smallestSpanSeconds * 4, whole.spanSeconds()), whole.spanSeconds());
        return showing((fromSeconds + toSeconds - span) / 2, span);
    }

    private TimeView showing(double startSeconds, double spanSeconds) {
        double span = Math.min(spanSeconds, whole.spanSeconds());
        double start = Math.clamp(
                startSeconds, whole.startSeconds(), Math.max(whole.startSeconds(), whole.endSeconds() - span));
        return new TimeView(
                whole, new TimeWindow(start, Math.min(start + span, whole.endSeconds())), smallestSpanSeconds);
    }
}
