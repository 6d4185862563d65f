// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dutywright.units.ScaledUnit;

/** Picks, names, scales and units of a recording that lies in several files. */
final class JoinedChoice {
    private JoinedChoice() {}

    /** Applies what was said of channels to a joined capture, whose files were read with nothing said of them. */
    static Capture of(Capture capture, ReadSettings settings) throws UnreadableException {
        List<ColumnChoice.Column> columns = capture.channels().stream()
                .map(channel -> new ColumnChoice.Column(channel.name(), channel.name(), channel.unit(), 1))
                .toList();
        Path file = capture.sources().get(0).path();
        ReadSettings wanted = settings.withChannels(settings.channels(), settings.scales(), Map.of());
        List<ColumnChoice.Chosen> plain = ColumnChoice.choose(file, columns, wanted);
        Map<String, ScaledUnit> units = relative(file, plain, capture, settings);
        wanted = settings.withChannels(settings.channels(), settings.scales(), units);
        List<ColumnChoice.Chosen> chosen = ColumnChoice.choose(file, columns, wanted);
        List<Channel> channels =
                chosen.stream().map(ColumnChoice.Chosen::channel).toList();
        return new Capture(
                capture.sources(),
                channels,
                capture.timeBase(),
                ColumnChoice.view(capture.samples(), chosen),
                capture.guessed(),
                capture.statedRates(),
                asRead(capture, plain, settings));
    }

    /** The values are in the units that their files say; what they are to be multiplied by lies in between. */
    private static Map<String, ScaledUnit> relative(
            Path file, List<ColumnChoice.Chosen> chosen, Capture capture, ReadSettings settings)
            throws UnreadableException {
        Map<String, ScaledUnit> units = new LinkedHashMap<>(settings.units());
        for (ColumnChoice.Chosen one : chosen) {
            String name = one.channel().name();
            ScaledUnit wanted = settings.units().get(name);
            if (wanted == null) {
                continue;
            }
            String before = capture.channels().get(one.column()).name();
            ScaledUnit read = capture.asRead().units().get(before);
            if (read == null) {
                throw UnreadableException.lacks(
                        file,
                        "the unit of '" + name + "' cannot be set beside other files",
                        "set it for its file alone, and convert that file first");
            }
            units.put(name, new ScaledUnit(wanted.unit(), wanted.factor() / read.factor()));
        }
        return units;
    }

    private static ReadSettings asRead(Capture capture, List<ColumnChoice.Chosen> chosen, ReadSettings settings) {
        Map<String, ScaledUnit> units = new LinkedHashMap<>();
        for (ColumnChoice.Chosen one : chosen) {
            String name = one.channel().name();
            String before = capture.channels().get(one.column()).name();
            ScaledUnit unit =
                    settings.units().getOrDefault(name, capture.asRead().units().get(before));
            if (unit != null) {
                units.put(name, unit);
            }
        }
        List<ReadSettings.Pick> picks = chosen.stream()
                .map(one -> new ReadSettings.Pick(
                        capture.channels().get(one.column()).name(),
                        one.channel().name()))
                .toList();
        return capture.asRead().withChannels(picks, settings.scales(), units);
    }
}
