// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dutywright.sensor.Sensor;

/**
 * Which channel of a capture stands for which channel of the sensor: by name where all names occur, else by
 * order.
 *
 * @param captureNames name in the capture for each channel of the sensor that found one, by the sensor's name
 * @param byName whether the names matched
 */
public record ChannelMatch(Map<String, String> captureNames, boolean byName) {

    /** Copies its arguments, keeping the order. */
    public ChannelMatch {
        captureNames = Collections.unmodifiableMap(new LinkedHashMap<>(captureNames));
    }

    /**
     * Matches.
     *
     * @param captureNames channels of the capture that may carry a signal, in order
     */
    public static ChannelMatch of(Sensor sensor, List<String> captureNames) {
        Map<String, String> byName = new LinkedHashMap<>();
        Map<String, String> byOrder = new LinkedHashMap<>();
        List<String> wanted = new ArrayList<>();
        sensor.channels().forEach(channel -> wanted.add(channel.name()));
        for (int i = 0; i < wanted.size(); i++) {
            if (captureNames.contains(wanted.get(i))) {
                byName.put(wanted.get(i), wanted.get(i));
            }
            if (i < captureNames.size()) {
                byOrder.put(wanted.get(i), captureNames.get(i));
            }
        }
        boolean named = !byName.isEmpty();
        return new ChannelMatch(named ? byName : byOrder, named);
    }
}
