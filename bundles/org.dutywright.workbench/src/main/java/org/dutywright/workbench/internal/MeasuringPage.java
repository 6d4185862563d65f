// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import java.util.LinkedHashMap;
import java.util.Map;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.PulseSettings.Group;
import org.dutywright.pulse.PulseSettings.Setting;
import org.dutywright.pulse.SettingText;
import org.dutywright.workbench.WidgetIds;
import org.dutywright.workbench.session.MeasuringPreferences;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.preference.PreferencePage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPreferencePage;

/** The settings of measuring, made from their declaration: a field each, with unit, range and help. */
public final class MeasuringPage extends PreferencePage implements IWorkbenchPreferencePage {
    /** What the names of the fields start with; the id of the setting follows. */
    public static final String FIELD = "measuring.";

    private static final int FIELD_WIDTH = 90;

    private final Map<Setting, Text> fields = new LinkedHashMap<>();

    /** For the platform. */
    public MeasuringPage() {
        super("PWM Measurement");
        setDescription(
                "Captures that are open are measured anew with what is set here. Values may have a unit, as in 500 mV.");
    }

    @Override
    public void init(IWorkbench workbench) {}

    @Override
    protected Control createContents(Composite parent) {
        Composite page = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().applyTo(page);
        PulseSettings current = MeasuringPreferences.current();
        for (Group group : Group.values()) {
            org.eclipse.swt.widgets.Group box = new org.eclipse.swt.widgets.Group(page, SWT.NONE);
            box.setText(group.label());
            GridLayoutFactory.swtDefaults().numColumns(3).applyTo(box);
            GridDataFactory.fillDefaults().grab(true, false).applyTo(box);
            group.settings().forEach(setting -> row(box, setting, current.get(setting)));
        }
        return page;
    }

    private void row(Composite box, Setting setting, double value) {
        Label label = new Label(box, SWT.NONE);
        label.setText(setting.label() + ":");
        label.setToolTipText(setting.help());
        Text field = WidgetIds.name(new Text(box, SWT.BORDER | SWT.SINGLE), FIELD + setting.id());
        field.setText(SettingText.number(value));
        field.setToolTipText(setting.help());
        GridDataFactory.swtDefaults().hint(FIELD_WIDTH, SWT.DEFAULT).applyTo(field);
        field.addModifyListener(event -> validate());
        Label range = new Label(box, SWT.NONE);
        range.setText((setting.unit().isEmpty() ? "" : setting.unit() + "  ") + "(" + SettingText.number(setting.min())
                + " to " + SettingText.number(setting.max()) + ")");
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .grab(true, false)
                .applyTo(range);
        fields.put(setting, field);
    }

    private void validate() {
        String problem = null;
        for (Map.Entry<Setting, Text> field : fields.entrySet()) {
            try {
                SettingText.parse(field.getKey(), field.getValue().getText());
            } catch (IllegalArgumentException e) {
                problem = field.getKey().label() + ": " + e.getMessage();
                break;
            }
        }
        setErrorMessage(problem);
        setValid(problem == null);
    }

    @Override
    protected void performDefaults() {
        fields.forEach((setting, field) -> field.setText(SettingText.number(setting.defaultValue())));
        super.performDefaults();
    }

    @Override
    public boolean performOk() {
        PulseSettings settings = PulseSettings.defaults();
        for (Map.Entry<Setting, Text> field : fields.entrySet()) {
            settings = settings.with(
                    field.getKey(),
                    SettingText.parse(field.getKey(), field.getValue().getText()));
        }
        MeasuringPreferences.store(settings);
        return true;
    }
}
