// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.SettingText;
import org.dutywright.report.TextTable;
import picocli.CommandLine.Command;

/** Lists the settings of measuring. */
@Command(
        name = "settings",
        description = "Lists the settings of measuring: id for --setting, default, range, and what each does.")
final class SettingsCommand implements Callable<Integer> {
    private static final int HELP_WIDTH = 78;

    private final Session session;

    SettingsCommand(Session session) {
        this.session = session;
    }

    @Override
    public Integer call() throws IOException {
        List<String> lines = new ArrayList<>();
        for (PulseSettings.Group group : PulseSettings.Group.values()) {
            lines.add((lines.isEmpty() ? "" : "\n") + group.label());
            TextTable table = TextTable.create().row("id", "default", "range", "");
            for (PulseSettings.Setting setting : group.settings()) {
                addTo(table, setting);
            }
            table.lines().forEach(line -> lines.add("  " + line));
        }
        session.print(lines);
        return ExitStatus.DONE;
    }

    private static void addTo(TextTable table, PulseSettings.Setting setting) {
        List<String> help = wrapped(setting.help());
        table.row(
                setting.id(),
                SettingText.of(setting, setting.defaultValue()),
                SettingText.number(setting.min()) + " to " + SettingText.of(setting, setting.max()),
                help.get(0));
        help.subList(1, help.size()).forEach(line -> table.row("", "", "", line));
    }

    private static List<String> wrapped(String text) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (line.length() + word.length() >= HELP_WIDTH) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
