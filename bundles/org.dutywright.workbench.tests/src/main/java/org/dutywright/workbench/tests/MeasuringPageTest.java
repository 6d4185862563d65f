// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.dutywright.pulse.EventSettings;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.PulseSettings.Setting;
import org.dutywright.pulse.SettingText;
import org.dutywright.workbench.WorkbenchIds;
import org.dutywright.workbench.internal.MeasuringPage;
import org.dutywright.workbench.session.MeasuringPreferences;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Screens;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.jface.preference.PreferenceDialog;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.dialogs.PreferencesUtil;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The page of the settings of measuring shows what is declared, and what is set there counts. */
@WindowTest
final class MeasuringPageTest {
    private PreferenceDialog dialog;

    @BeforeEach
    void open() {
        dialog = PreferencesUtil.createPreferenceDialogOn(
                PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell(),
                WorkbenchIds.MEASURING_PAGE,
                new String[] {WorkbenchIds.MEASURING_PAGE},
                null);
        dialog.setBlockOnOpen(false);
        dialog.open();
        Pump.settle();
    }

    @AfterEach
    void close() {
        dialog.close();
        MeasuringPreferences.store(PulseSettings.defaults());
    }

    private static Text field(Setting setting) {
        return Widgets.named(MeasuringPage.FIELD + setting.id(), Text.class);
    }

    @Test
    void each_declared_setting_has_a_field_with_its_value_and_help() {
        for (Setting setting : PulseSettings.DECLARED) {
            assertThat(field(setting).getText()).isEqualTo(SettingText.number(setting.defaultValue()));
            assertThat(field(setting).getToolTipText()).isEqualTo(setting.help());
        }
        Path picture = Screens.take(dialog.getShell(), 900, 700, "preferences-measuring");
        // a page that failed to paint shows a handful of colours
        assertThat(Screens.colours(picture)).isGreaterThan(30);
    }

    @Test
    void what_is_set_counts_from_then_on() {
        field(EventSettings.RUNT_SHARE).setText("15 %");
        field(EventSettings.STUCK_ALONE).setText("500 mV");
        ok();

        assertThat(MeasuringPreferences.current())
                .isEqualTo(PulseSettings.defaults()
                        .with(EventSettings.RUNT_SHARE, 15)
                        .with(EventSettings.STUCK_ALONE, 0.5));
    }

    @Test
    void a_value_out_of_range_is_refused_with_the_range() {
        MeasuringPage page = (MeasuringPage) dialog.getSelectedPage();
        field(EventSettings.RUNT_SHARE).setText("50");

        assertThat(page.isValid()).isFalse();
        assertThat(page.getErrorMessage()).contains("between 1 % and 45 %");

        field(EventSettings.RUNT_SHARE).setText("45");
        assertThat(page.isValid()).isTrue();
        assertThat(page.getErrorMessage()).isNull();
    }

    @Test
    void the_defaults_come_back() {
        field(EventSettings.RUNT_SHARE).setText("15");
        ok();
        open();
        assertThat(field(EventSettings.RUNT_SHARE).getText()).isEqualTo("15");

        Widgets.press(Widgets.withChildren(dialog.getShell())
                .filter(Button.class::isInstance)
                .map(Button.class::cast)
                .filter(button -> button.getText().equals(JFaceResources.getString("defaults")))
                .findFirst()
                .orElseThrow());
        assertThat(field(EventSettings.RUNT_SHARE).getText()).isEqualTo("10");
        ok();
        assertThat(MeasuringPreferences.current()).isEqualTo(PulseSettings.defaults());
    }

    private void ok() {
        Widgets.press(dialog.getShell().getDefaultButton());
        Pump.until("the dialog is closed", () -> dialog.getShell() == null);
    }
}
