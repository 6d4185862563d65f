// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture;

import java.util.Optional;
import org.dutywright.workbench.capture.internal.CaptureSheet;
import org.dutywright.workbench.capture.internal.Mark;
import org.dutywright.workbench.capture.internal.Messages;
import org.dutywright.workbench.capture.internal.Selections;
import org.dutywright.workbench.capture.internal.TracePlot;
import org.dutywright.workbench.capture.internal.TracePointer;
import org.dutywright.workbench.session.CaptureSession;
import org.dutywright.workbench.session.CaptureSessions;
import org.dutywright.workbench.session.CycleSelection;
import org.dutywright.workbench.session.Findings;
import org.dutywright.workbench.session.SpanSelection;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IEditorSite;
import org.eclipse.ui.IFileEditorInput;
import org.eclipse.ui.ISelectionListener;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.ide.IGotoMarker;
import org.eclipse.ui.part.EditorPart;

/**
 * Shows the traces of a capture. What is chosen in them is the platform's selection, and what is chosen elsewhere in the
 * same capture is marked in them.
 */
public final class CaptureEditor extends EditorPart implements IGotoMarker {
    /** Id of the editor. */
    public static final String ID = "org.dutywright.workbench.capture.editor";

    private final Selections selections = new Selections();
    private final ISelectionListener elsewhere = this::selectedElsewhere;
    private final Runnable refresh = this::refresh;
    private CaptureSession session;
    private CaptureSheet sheet;
    private Optional<Place> awaited = Optional.empty();

    private record Place(String channel, double startSeconds, double endSeconds, boolean close) {}

    @Override
    public void init(IEditorSite site, IEditorInput input) throws PartInitException {
        if (!(input instanceof IFileEditorInput fileInput)) {
            throw new PartInitException(Messages.onlyWorkspaceFiles);
        }
        setSite(site);
        setInput(input);
        setPartName(input.getName());
        site.setSelectionProvider(selections);
        session = CaptureSessions.acquire(fileInput.getFile());
    }

    @Override
    public void createPartControl(Composite parent) {
        sheet = new CaptureSheet(
                parent,
                session,
                plot -> new TracePointer(
                        plot,
                        session,
                        selections::setSelection,
                        getEditorSite().getActionBars().getStatusLineManager()));
        getSite().getPage().addSelectionListener(elsewhere);
        session.addListener(refresh);
        refresh();
    }

    private void refresh() {
        sheet.refresh();
        if (sheet.plot().isPresent() && awaited.isPresent()) {
            Place place = awaited.get();
            awaited = Optional.empty();
            show(place);
        }
    }

    private void selectedElsewhere(IWorkbenchPart part, ISelection selection) {
        if (part == this || !(selection instanceof IStructuredSelection structured)) {
            return;
        }
        Object chosen = structured.getFirstElement();
        if (chosen instanceof CycleSelection cycle && isMine(cycle.file())) {
            show(new Place(cycle.channel(), cycle.startSeconds(), cycle.endSeconds(), false));
        } else if (chosen instanceof SpanSelection span && isMine(span.file())) {
            show(new Place(span.channel(), span.startSeconds(), span.endSeconds(), false));
        }
    }

    private boolean isMine(IFile file) {
        return file.equals(session.file());
    }

    @Override
    public void gotoMarker(IMarker marker) {
        Findings.place(marker)
                .filter(place -> isMine(place.file()))
                .ifPresent(place -> show(new Place(place.channel(), place.startSeconds(), place.endSeconds(), true)));
    }

    private void show(Place place) {
        Optional<TracePlot> plot = sheet.plot();
        if (plot.isEmpty()) {
            awaited = Optional.of(place);
            return;
        }
        TracePlot traces = plot.get();
        traces.setMark(Optional.of(new Mark(traces.laneOf(place.channel()), place.startSeconds(), place.endSeconds())));
        traces.showView(
                place.close()
                        ? traces.view().closeTo(place.startSeconds(), place.endSeconds())
                        : traces.view().revealing(place.startSeconds(), place.endSeconds()));
    }

    @Override
    public <T> T getAdapter(Class<T> adapter) {
        if (adapter == TracePlot.class) {
            return adapter.cast(sheet.plot().orElse(null));
        }
        return super.getAdapter(adapter);
    }

    @Override
    public void setFocus() {
        // editors of the same kind share the line, and it may still speak of another capture
        getEditorSite().getActionBars().getStatusLineManager().setMessage("");
        sheet.setFocus();
    }

    @Override
    public void dispose() {
        getSite().getPage().removeSelectionListener(elsewhere);
        if (session != null) {
            session.removeListener(refresh);
            CaptureSessions.release(session);
        }
        super.dispose();
    }

    @Override
    public void doSave(IProgressMonitor monitor) {}

    @Override
    public void doSaveAs() {}

    @Override
    public boolean isDirty() {
        return false;
    }

    @Override
    public boolean isSaveAsAllowed() {
        return false;
    }
}
