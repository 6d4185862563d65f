// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.Optional;
import java.util.function.Consumer;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.workbench.WidgetIds;
import org.dutywright.workbench.pulse.PulseIds;
import org.dutywright.workbench.session.CaptureSession;
import org.dutywright.workbench.session.CaptureSessions;
import org.dutywright.workbench.session.CycleSelection;
import org.dutywright.workbench.session.SessionState.Phase;
import org.dutywright.workbench.session.SpanSelection;
import org.eclipse.core.resources.IFile;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.ISelectionListener;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.part.ViewPart;

/** Shows what was measured on the capture in the active editor, and what the last check of it found. */
public final class PulseView extends ViewPart {
    private final PointProvider points = new PointProvider();
    private final Runnable sessionChanged = this::show;
    private final ISelectionListener selections = this::selected;
    private final Consumer<IFile> reported = this::reported;
    private Optional<CaptureSession> session = Optional.empty();
    private Optional<ActiveCapture> active = Optional.empty();
    private Optional<Object> pending = Optional.empty();
    private Composite measuredTab;
    private StackLayout stack;
    private CTabFolder tabs;
    private StatusPane status;
    private MeasuredPane measured;
    private CheckPane check;

    @Override
    public void createPartControl(Composite parent) {
        tabs = WidgetIds.name(new CTabFolder(parent, SWT.BOTTOM | SWT.FLAT), PulseIds.TABS);
        measuredTab = new Composite(tabs, SWT.NONE);
        stack = new StackLayout();
        measuredTab.setLayout(stack);
        status = new StatusPane(
                measuredTab,
                () -> session.ifPresent(CaptureSession::cancel),
                () -> session.ifPresent(CaptureSession::restart));
        measured = new MeasuredPane(measuredTab, this::chosen);
        check = new CheckPane(tabs);
        tab(Messages.measuredTab, measuredTab);
        tab(Messages.checkTab, check.control());
        tabs.setSelection(0);
        getSite().setSelectionProvider(points);
        getSite().getPage().addSelectionListener(selections);
        CheckReports.addListener(reported);
        active = Optional.of(ActiveCapture.follow(getSite().getPage(), this::follow));
        show();
    }

    private void tab(String title, Control control) {
        CTabItem item = new CTabItem(tabs, SWT.NONE);
        item.setText(title);
        item.setControl(control);
    }

    private void follow(Optional<IFile> file) {
        if (session.map(CaptureSession::file).equals(file)) {
            return;
        }
        release();
        pending = Optional.empty();
        session = file.map(CaptureSessions::acquire);
        session.ifPresent(it -> it.addListener(sessionChanged));
        points.setSelection(StructuredSelection.EMPTY);
        show();
        showReport();
    }

    private void release() {
        session.ifPresent(it -> {
            it.removeListener(sessionChanged);
            CaptureSessions.release(it);
        });
        session = Optional.empty();
    }

    private void show() {
        if (tabs.isDisposed()) {
            return;
        }
        Optional<CaptureMeasurement> done =
                session.filter(it -> it.state().phase() == Phase.DONE).flatMap(CaptureSession::measurement);
        measured.show(done);
        Control top = done.isPresent() ? measured.control() : status.control();
        if (done.isEmpty()) {
            status.show(session);
        }
        if (stack.topControl != top) {
            stack.topControl = top;
            measuredTab.layout();
        }
        if (done.isPresent()) {
            pending.ifPresent(this::reveal);
            pending = Optional.empty();
        }
    }

    private void chosen(MeasuredPane.Choice choice) {
        session.ifPresent(it -> points.setSelection(new StructuredSelection(new CycleSelection(
                it.file(),
                choice.channel(),
                choice.cycle().index(),
                choice.cycle().startSeconds(),
                choice.cycle().endSeconds()))));
    }

    /** Takes over what another part has selected. */
    void selected(IWorkbenchPart part, ISelection selection) {
        if (part == this || !(selection instanceof IStructuredSelection several) || several.size() != 1) {
            return;
        }
        Object place = several.getFirstElement();
        boolean ours = place instanceof CycleSelection cycle && isShown(cycle.file())
                || place instanceof SpanSelection span && isShown(span.file());
        if (ours && session.map(it -> it.state().phase() == Phase.DONE).orElse(false)) {
            reveal(place);
        } else if (ours) {
            pending = Optional.of(place);
        }
    }

    private void reveal(Object place) {
        if (place instanceof CycleSelection cycle) {
            measured.reveal(cycle.channel(), cycle.cycle());
        } else if (place instanceof SpanSelection span) {
            measured.revealAt(span.channel(), span.startSeconds());
        }
    }

    private boolean isShown(IFile file) {
        return session.map(it -> it.file().equals(file)).orElse(false);
    }

    private void reported(IFile file) {
        Display display = getSite().getShell().getDisplay();
        display.asyncExec(() -> {
            if (!tabs.isDisposed() && isShown(file)) {
                showReport();
                tabs.setSelection(1);
            }
        });
    }

    private void showReport() {
        check.show(session.flatMap(it -> CheckReports.of(it.file())));
    }

    @Override
    public void setFocus() {
        if (tabs.getSelectionIndex() == 0 && stack.topControl == measured.control()) {
            measured.setFocus();
        } else {
            tabs.setFocus();
        }
    }

    @Override
    public void dispose() {
        active.ifPresent(ActiveCapture::stop);
        CheckReports.removeListener(reported);
        getSite().getPage().removeSelectionListener(selections);
        release();
        super.dispose();
    }
}
