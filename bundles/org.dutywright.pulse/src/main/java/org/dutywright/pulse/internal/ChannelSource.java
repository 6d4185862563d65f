// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;

/**
 * One channel, to be read as often as needed.
 *
 * @param capture that holds it
 * @param channel its index
 * @param progress told of every sample read
 */
public record ChannelSource(Capture capture, int channel, Progress progress) {
    /** Starts reading at the first sample. */
    ChannelBlocks open() throws IOException {
        return ChannelBlocks.of(capture, channel, progress);
    }
}
