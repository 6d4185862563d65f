// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.product.tests;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.dutywright.capture.Progress;
import org.dutywright.simulation.DemoScenarios;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.Simulator;
import org.dutywright.workbench.capture.CaptureEditor;
import org.dutywright.workbench.capture.internal.TracePlot;
import org.dutywright.workbench.internal.Jobs;
import org.dutywright.workbench.pulse.PulseIds;
import org.dutywright.workbench.pulse.internal.CycleGrid;
import org.dutywright.workbench.session.CaptureSessions;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Widgets;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.nebula.widgets.nattable.NatTable;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.IDE;

/** A job with simulated captures, and the parts of the window that show them. */
final class JobDesk implements AutoCloseable {
    private final IProject project;

    JobDesk(String name) throws CoreException {
        project = Jobs.create(name, Optional.empty(), new NullProgressMonitor());
    }

    static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }

    /** Simulates one of the demonstration captures into the job. */
    IFile simulate(String demo) throws IOException, CoreException {
        Scenario scenario = DemoScenarios.all().stream()
                .filter(one -> one.name().equals(demo))
                .findFirst()
                .orElseThrow()
                .scenario();
        Path folder = project.getFolder(Jobs.CAPTURES).getLocation().toPath();
        Simulator.write(scenario, folder.resolve(demo + ".csv"), Progress.NONE);
        project.refreshLocal(IResource.DEPTH_INFINITE, null);
        return project.getFolder(Jobs.CAPTURES).getFile(demo + ".csv");
    }

    /** Writes a note. */
    IFile write(String name, String text) throws CoreException {
        IFile file = project.getFile(name);
        file.create(text.getBytes(StandardCharsets.UTF_8), IResource.NONE, new NullProgressMonitor());
        return file;
    }

    /** Opens a capture and waits for its traces. */
    static CaptureEditor open(IFile file) throws PartInitException {
        CaptureEditor editor = (CaptureEditor) IDE.openEditor(page(), file);
        traces(editor);
        return editor;
    }

    /** The traces of an editor, as soon as they are painted. */
    static TracePlot traces(CaptureEditor editor) {
        TracePlot plot = Pump.untilPresent(
                "the traces are there", () -> Optional.ofNullable(editor.getAdapter(TracePlot.class)));
        Pump.until("the traces of the present view are painted", plot::isUpToDate);
        return plot;
    }

    /** The table of cycles, as soon as it lists some. */
    static CycleGrid cycles() {
        return Pump.untilPresent(
                "the cycles are listed",
                () -> Widgets.find(PulseIds.CYCLES, NatTable.class)
                        .filter(NatTable::isVisible)
                        .map(CycleGrid::of)
                        .filter(grid -> grid.count() > 0));
    }

    /** Clicks with the left button. */
    static void click(Control control, int x, int y) {
        for (int type : new int[] {SWT.MouseDown, SWT.MouseUp}) {
            Event event = new Event();
            event.button = 1;
            event.x = x;
            event.y = y;
            control.notifyListeners(type, event);
        }
    }

    /** Closes what shows captures, so that the next test finds it as at first, and waits for the work to end. */
    static void tidy() {
        page().closeAllEditors(false);
        Arrays.stream(page().getViewReferences())
                .filter(view -> view.getId().equals(PulseIds.VIEW))
                .forEach(page()::hideView);
        Pump.until("the work is over", () -> Job.getJobManager().find(CaptureSessions.FAMILY).length == 0);
    }

    @Override
    public void close() throws CoreException {
        tidy();
        project.delete(true, true, new NullProgressMonitor());
    }
}
