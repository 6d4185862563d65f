// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

import java.util.List;

/**
 * What is drawn of a capture in a window of time.
 *
 * @param scale the window and the width that it was made for
 * @param channels for each channel its runs, which gaps of the recording separate
 * @param samplesAreSingle whether each point is a sample, so that it may be marked as one
 */
public record Drawing(TimeScale scale, List<List<Run>> channels, boolean samplesAreSingle) {
    /** Copies its lists. */
    public Drawing {
        channels = channels.stream().map(List::copyOf).toList();
    }
}
