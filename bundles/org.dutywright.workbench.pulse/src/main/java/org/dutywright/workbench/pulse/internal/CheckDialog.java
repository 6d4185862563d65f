// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.dutywright.diagnosis.CheckSettings;
import org.dutywright.sensor.Catalogue;
import org.dutywright.workbench.WidgetIds;
import org.dutywright.workbench.pulse.PulseIds;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.IMessageProvider;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;

/** Asks for the sensor, and for what the recording itself cannot tell. */
final class CheckDialog extends TitleAreaDialog {
    private static final int LIST_WIDTH = 560;
    private static final int LIST_HEIGHT = 140;

    private final String fileName;
    private final Catalogue catalogue;
    private final Optional<String> usual;
    private Table sensors;
    private Text supply;
    private Combo position;
    private Optional<CheckWish> wish = Optional.empty();

    CheckDialog(Shell parent, String fileName, Catalogue catalogue, Optional<String> usual) {
        super(parent);
        this.fileName = fileName;
        this.catalogue = catalogue;
        this.usual = usual;
        setShellStyle(getShellStyle() | SWT.RESIZE);
    }

    /** What the user wants, empty if nothing. */
    Optional<CheckWish> wish() {
        return wish;
    }

    @Override
    protected void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText(Messages.checkTab);
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = (Composite) super.createDialogArea(parent);
        Composite form = new Composite(area, SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(form);
        GridLayoutFactory.swtDefaults().numColumns(3).margins(10, 10).applyTo(form);
        setTitle(NLS.bind(Messages.checkTitle, fileName));
        setMessage(Messages.checkMessage);
        if (!catalogue.problems().isEmpty()) {
            String words = new MessageFormat(Messages.textsWrong, Locale.ROOT).format(new Object[] {
                catalogue.problems().size(), catalogue.problems().get(0).toString()
            });
            setMessage(words, IMessageProvider.WARNING);
        }
        sensors(form);
        label(form, Messages.supply);
        supply = WidgetIds.name(new Text(form, SWT.BORDER), PulseIds.SUPPLY);
        GridDataFactory.swtDefaults().hint(100, SWT.DEFAULT).applyTo(supply);
        label(form, Messages.supplyHint);
        label(form, Messages.position);
        position = WidgetIds.name(new Combo(form, SWT.READ_ONLY), PulseIds.POSITION);
        position.setItems(Messages.positionUnknown, Messages.positionReleased, Messages.positionPressed);
        position.select(0);
        GridDataFactory.swtDefaults().span(2, 1).applyTo(position);
        return area;
    }

    private void sensors(Composite form) {
        Label label = label(form, Messages.sensor);
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.TOP).applyTo(label);
        sensors = WidgetIds.name(new Table(form, SWT.BORDER | SWT.SINGLE | SWT.FULL_SELECTION), PulseIds.SENSORS);
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .span(2, 1)
                .hint(LIST_WIDTH, LIST_HEIGHT)
                .applyTo(sensors);
        new TableColumn(sensors, SWT.NONE);
        new TableColumn(sensors, SWT.NONE);
        List<Catalogue.Entry> entries = catalogue.entries();
        for (Catalogue.Entry entry : entries) {
            TableItem item = new TableItem(sensors, SWT.NONE);
            item.setText(0, entry.sensor().id());
            item.setText(1, entry.sensor().title());
        }
        for (TableColumn column : sensors.getColumns()) {
            column.pack();
        }
        IntStream.range(0, entries.size())
                .filter(index ->
                        usual.filter(entries.get(index).sensor().id()::equals).isPresent())
                .findFirst()
                .ifPresent(sensors::select);
        sensors.addListener(SWT.DefaultSelection, event -> okPressed());
    }

    private static Label label(Composite form, String words) {
        Label label = new Label(form, SWT.NONE);
        label.setText(words);
        return label;
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, Messages.checkButton, true);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
    }

    @Override
    protected void okPressed() {
        if (sensors.getSelectionIndex() < 0) {
            setErrorMessage(Messages.sensorWrong);
            return;
        }
        try {
            OptionalDouble volts = CheckWish.supply(supply.getText());
            CheckSettings settings = new CheckSettings(volts, CheckWish.position(position.getSelectionIndex()));
            wish = Optional.of(new CheckWish(
                    catalogue.entries().get(sensors.getSelectionIndex()).sensor(), settings));
            super.okPressed();
        } catch (NumberFormatException e) {
            setErrorMessage(Messages.supplyWrong);
        }
    }
}
