// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.ReadSettings;
import org.dutywright.pulse.ChannelPlan;

/**
 * What was said to the run that made a result, beside the settings of measuring: kept in the file so that the run
 * can be repeated from it.
 *
 * @param program name and version of the program
 * @param timeBasePpm relative uncertainty of the recording's clock that was assumed, in parts per million
 * @param read what was said about reading the files
 * @param plans roles and active levels that the user gave, by channel
 * @param fromSeconds start of the part that was measured, in the file's time
 * @param toSeconds its end
 * @param position the known position of the whole capture, "released" or "pressed"
 * @param supplyVolts the supply voltage that was said
 * @param catalogues folders added to the built-in catalogue
 */
public record RunSettings(
        String program,
        double timeBasePpm,
        ReadSettings read,
        Map<String, ChannelPlan> plans,
        OptionalDouble fromSeconds,
        OptionalDouble toSeconds,
        Optional<String> position,
        OptionalDouble supplyVolts,
        List<String> catalogues) {

    /** Copies its arguments, keeping the order. */
    public RunSettings {
        plans = Collections.unmodifiableMap(new LinkedHashMap<>(plans));
        catalogues = List.copyOf(catalogues);
    }

    /** Nothing said but the clock's uncertainty. */
    public static RunSettings of(String program, double timeBasePpm) {
        return new RunSettings(
                program,
                timeBasePpm,
                ReadSettings.none(),
                Map.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                List.of());
    }
}
