// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dutywright.units.ScaledUnit;

/**
 * Everything that can be said about reading the files of one instrument, under a name: to be kept and used again.
 *
 * @param name for people
 * @param read how to read
 * @param roles word of the role that a channel has in measuring, by its name
 */
public record ImportSettings(String name, ReadSettings read, Map<String, String> roles) {

    /** Copies its map, keeping the order. */
    public ImportSettings {
        roles = Collections.unmodifiableMap(new LinkedHashMap<>(roles));
    }

    /** Nothing said, without a name. */
    public static ImportSettings none() {
        return new ImportSettings("", ReadSettings.none(), Map.of());
    }

    /**
     * The same with what somebody says on top: what they say wins. Other picks take the place of all before; what
     * was said of a column, its scale, unit and role, goes with the column to its new name.
     *
     * @param said on top
     */
    public ImportSettings with(ReadSettings said) {
        Map<String, String> names = said.channels().isEmpty() ? Map.of() : newNames(said.channels());
        boolean same = said.channels().isEmpty();
        Map<String, Double> scales = same ? new LinkedHashMap<>(read.scales()) : renamed(read.scales(), names);
        scales.putAll(said.scales());
        Map<String, ScaledUnit> units = same ? new LinkedHashMap<>(read.units()) : renamed(read.units(), names);
        units.putAll(said.units());
        ReadSettings merged = new ReadSettings(
                said.format().or(read::format),
                said.sampleRateHz().isPresent() ? said.sampleRateHz() : read.sampleRateHz(),
                same ? read.channels() : said.channels(),
                scales,
                units,
                said.fullScaleVolts().isPresent() ? said.fullScaleVolts() : read.fullScaleVolts(),
                said.time().orElse(read.time()),
                said.table().orElse(read.table()));
        return new ImportSettings(name, merged, same ? roles : renamed(roles, names));
    }

    /** The new name of each channel here whose column is picked. */
    private Map<String, String> newNames(List<ReadSettings.Pick> picks) {
        Map<String, String> names = new LinkedHashMap<>();
        List<ReadSettings.Pick> mine = new ArrayList<>(read.channels());
        for (ReadSettings.Pick pick : picks) {
            mine.stream()
                    .filter(old ->
                            old.column().equals(pick.column()) || old.name().equals(pick.column()))
                    .findFirst()
                    .ifPresent(old -> names.put(old.name(), pick.name()));
        }
        return names;
    }

    private static <T> Map<String, T> renamed(Map<String, T> values, Map<String, String> names) {
        Map<String, T> renamed = new LinkedHashMap<>();
        values.forEach((name, value) -> {
            if (names.containsKey(name)) {
                renamed.put(names.get(name), value);
            }
        });
        return renamed;
    }
}
