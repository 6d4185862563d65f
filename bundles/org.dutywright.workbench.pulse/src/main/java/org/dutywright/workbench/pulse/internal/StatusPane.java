// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.Optional;
import org.dutywright.workbench.WidgetIds;
import org.dutywright.workbench.pulse.PulseIds;
import org.dutywright.workbench.session.CaptureSession;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.ProgressBar;

/** What stands in the place of numbers while there are none: what is being done, or why there is nothing. */
final class StatusPane {
    private static final int STEPS = 100;
    private static final int WIDTH = 360;

    private final Composite pane;
    private final Label message;
    private final ProgressBar progress;
    private final Button cancel;
    private final Button again;

    StatusPane(Composite parent, Runnable onCancel, Runnable onAgain) {
        pane = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().margins(12, 10).spacing(8, 8).applyTo(pane);
        message = WidgetIds.name(new Label(pane, SWT.WRAP), PulseIds.MESSAGE);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(WIDTH, SWT.DEFAULT)
                .applyTo(message);
        progress = WidgetIds.name(new ProgressBar(pane, SWT.SMOOTH), PulseIds.PROGRESS);
        progress.setMaximum(STEPS);
        GridDataFactory.swtDefaults().hint(WIDTH, SWT.DEFAULT).applyTo(progress);
        cancel = WidgetIds.name(new Button(pane, SWT.PUSH), PulseIds.CANCEL);
        cancel.setText(Messages.cancel);
        cancel.addListener(SWT.Selection, event -> onCancel.run());
        again = WidgetIds.name(new Button(pane, SWT.PUSH), PulseIds.AGAIN);
        again.setText(Messages.again);
        again.addListener(SWT.Selection, event -> onAgain.run());
        GridDataFactory.swtDefaults().applyTo(cancel);
        GridDataFactory.swtDefaults().applyTo(again);
    }

    Composite control() {
        return pane;
    }

    void show(Optional<CaptureSession> session) {
        boolean busy = session.map(it -> it.state().isBusy()).orElse(false);
        visible(progress, busy);
        visible(cancel, busy);
        visible(again, session.isPresent() && !busy);
        message.setText(
                session.map(StatusPane::words).orElse(Messages.nothingOpen).replace("&", "&&"));
        session.ifPresent(
                it -> progress.setSelection((int) (STEPS * it.doing().share().orElse(0))));
        pane.layout();
    }

    private static String words(CaptureSession session) {
        String name = session.file().getName();
        return switch (session.state().phase()) {
            case OPENING -> NLS.bind(Messages.opening, name);
            case MEASURING, DONE -> NLS.bind(Messages.measuring, name);
            case FAILED -> Messages.failed + "\n" + session.state().message();
            case CANCELLED -> NLS.bind(Messages.cancelled, name);
        };
    }

    private static void visible(Control control, boolean shown) {
        control.setVisible(shown);
        ((GridData) control.getLayoutData()).exclude = !shown;
    }
}
