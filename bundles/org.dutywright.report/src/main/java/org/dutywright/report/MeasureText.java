// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.report.internal.ChannelText;
import org.dutywright.report.internal.RecordingText;

/**
 * What was measured, for people: aligned columns, values with their standard uncertainties (k = 1) and units, events
 * by kind with their first few places.
 */
public final class MeasureText {
    private MeasureText() {}

    /** The lines, without line ends. */
    public static List<String> lines(CaptureMeasurement measurement) throws IOException {
        TextTable head = TextTable.create();
        RecordingText.addTo(head, measurement);
        List<String> lines = new ArrayList<>(head.lines());
        addChannels(lines, measurement);
        return lines;
    }

    static void addChannels(List<String> lines, CaptureMeasurement measurement) {
        for (ChannelMeasurement channel : measurement.channels()) {
            lines.add("");
            lines.addAll(ChannelText.lines(channel));
        }
    }
}
