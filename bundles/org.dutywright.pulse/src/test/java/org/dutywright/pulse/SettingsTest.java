// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.dutywright.pulse.PulseSettings.Group;
import org.dutywright.pulse.PulseSettings.Setting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Settings are declared once; what is declared can be shown, written, read and checked. */
class SettingsTest {
    @Test
    void each_one_has_what_a_person_needs_to_set_it() {
        Set<String> ids = new HashSet<>();
        for (Setting setting : PulseSettings.DECLARED) {
            assertThat(ids.add(setting.id())).as(setting.id()).isTrue();
            assertThat(setting.id()).matches("[a-z0-9.-]+");
            assertThat(setting.label()).isNotBlank();
            assertThat(setting.help()).endsWith(".");
            assertThat(setting.allows(setting.defaultValue())).as(setting.id()).isTrue();
            assertThat(setting.min()).isLessThan(setting.max());
        }
    }

    @Test
    void the_groups_hold_them_all_in_order() {
        List<Setting> grouped = Arrays.stream(Group.values())
                .flatMap(it -> it.settings().stream())
                .toList();
        assertThat(grouped).containsExactlyInAnyOrderElementsOf(PulseSettings.DECLARED);
        assertThat(Group.values()).allSatisfy(group -> {
            assertThat(group.settings()).isNotEmpty();
            assertThat(group.label()).isNotBlank();
        });
        assertThat(EventSettings.RUNT_SHARE.group()).isEqualTo(Group.EVENTS);
        assertThat(PulseSettings.LOWER_REFERENCE.group()).isEqualTo(Group.TRANSITIONS);
    }

    @Test
    void every_default_can_be_written_and_read_back() {
        for (Setting setting : PulseSettings.DECLARED) {
            String text = SettingText.of(setting, setting.defaultValue());
            assertThat(SettingText.parse(setting, text)).isEqualTo(setting.defaultValue());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "reference.lower, 20 %, 20",
        "reference.lower, 20, 20",
        "stuck.alone, 500 mV, 0.5",
        "stuck.alone, -1.5 volts, -1.5",
        "event.sigma, 8, 8",
        "instrument.time-base, 20 ppm, 20",
        "instrument.time-base, 2e1, 20"
    })
    void a_value_may_have_a_unit(String id, String text, double value) {
        assertThat(SettingText.parse(PulseSettings.find(id).orElseThrow(), text))
                .isEqualTo(value);
    }

    @ParameterizedTest
    @CsvSource({
        "reference.lower, 5000 %, between 1 % and 49 %",
        "reference.lower, 5 V, not a",
        "reference.lower, much, not a number",
        "event.sigma, 8 V, plain number",
        "instrument.time-base, 5 %, number of ppm",
        "stuck.alone, 5 kV, 1000 V"
    })
    void what_is_wrong_is_said_with_what_to_write(String id, String text, String part) {
        Setting setting = PulseSettings.find(id).orElseThrow();
        assertThatThrownBy(() -> SettingText.parse(setting, text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(id)
                .hasMessageContaining(part);
    }

    @Test
    void those_that_differ_from_the_default_are_the_changed_ones() {
        PulseSettings settings = PulseSettings.defaults()
                .with(EventSettings.RUNT_SHARE, 15)
                .with(PulseSettings.LOWER_REFERENCE, 20)
                .with(PulseSettings.LOWER_REFERENCE, 10);
        assertThat(settings.changed()).containsExactly(EventSettings.RUNT_SHARE);
        assertThat(settings).isEqualTo(PulseSettings.defaults().with(EventSettings.RUNT_SHARE, 15));
        assertThat(settings).isNotEqualTo(PulseSettings.defaults());
        assertThat(settings.hashCode())
                .isEqualTo(PulseSettings.defaults()
                        .with(EventSettings.RUNT_SHARE, 15)
                        .hashCode());
    }

    @Test
    void the_clock_that_was_assumed_stands_in_the_settings_of_the_result() throws Exception {
        TestSignal signal = TestSignal.at(100e3, 0.1).ramp(20e-6).carrier(200, 1e-3, 0.3);
        PulseSettings settings = PulseSettings.defaults().with(RecorderSettings.TIME_BASE, 5);
        CaptureMeasurement measured = CaptureMeasurer.withInstalled()
                .measure(Measured.capture(signal), java.util.Map.of(), settings, org.dutywright.capture.Progress.NONE);
        assertThat(measured.settings().get(RecorderSettings.TIME_BASE)).isEqualTo(5);
        double u = Measured.statistic(measured.channels().get(0), "frequency").u();
        // 5 ppm over the root of 3 of 200 Hz is 0.58 mHz, all but the edges' part
        assertThat(u).isLessThan(200 * CaptureMeasurer.DEFAULT_TIME_BASE_PPM * 1e-6);
    }
}
