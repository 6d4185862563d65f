// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.io.IOException;
import java.util.List;
import org.dutywright.capture.Capture;

/**
 * A capture and everything measured on it. Closing it frees the cycles, not the capture.
 *
 * @param capture what was measured
 * @param settings those used
 * @param fitness what the recording can and cannot carry
 * @param channels in the order of the capture
 */
public record CaptureMeasurement(
        Capture capture, PulseSettings settings, List<Fitness> fitness, List<ChannelMeasurement> channels)
        implements AutoCloseable {
    @Override
    public void close() throws IOException {
        for (ChannelMeasurement channel : channels) {
            channel.cycles().close();
        }
    }
}
