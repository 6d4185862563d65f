// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;

/** The markers that a check leaves on a capture, and their attributes. */
public final class Findings {
    /** Type of the markers. */
    public static final String MARKER = "org.dutywright.workbench.finding";
    /** Attribute: name of the channel in the capture; absent where the whole capture is meant. */
    public static final String CHANNEL = "channel";
    /** Attribute: where the place begins, in the capture's time, a decimal number; absent where there is no place. */
    public static final String START_SECONDS = "startSeconds";
    /** Attribute: where the place ends, as {@link #START_SECONDS}. */
    public static final String END_SECONDS = "endSeconds";
    /** Attribute: the item that was judged. */
    public static final String ITEM = "item";

    private Findings() {}

    /** The place that a marker tells of; empty for other markers and for those without a place. */
    public static Optional<SpanSelection> place(IMarker marker) {
        if (!(marker.getResource() instanceof IFile file)) {
            return Optional.empty();
        }
        try {
            double start = Double.parseDouble(marker.getAttribute(START_SECONDS, ""));
            double end = Double.parseDouble(marker.getAttribute(END_SECONDS, ""));
            return Optional.of(new SpanSelection(
                    file, marker.getAttribute(CHANNEL, ""), start, end, marker.getAttribute(IMarker.MESSAGE, "")));
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }
}
