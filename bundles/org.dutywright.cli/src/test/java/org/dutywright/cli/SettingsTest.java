// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.SettingText;
import org.junit.jupiter.api.Test;

/** What can be set is listed with default, range and help. */
final class SettingsTest {
    @Test
    void theListHasEachSettingWithDefaultRangeAndHelp() {
        Run run = Run.of("settings");
        assertThat(run.status()).isZero();
        assertThat(run.err()).isEmpty();
        for (PulseSettings.Setting setting : PulseSettings.DECLARED) {
            assertThat(run.out().lines().filter(line -> line.strip().startsWith(setting.id() + " ")))
                    .singleElement()
                    .asString()
                    .contains(SettingText.of(setting, setting.defaultValue()))
                    .contains(" to " + SettingText.of(setting, setting.max()))
                    .contains(setting.help().substring(0, 15));
        }
        assertThat(run.out()).contains("State levels", "Transitions", "Events", "Recorder");
    }
}
