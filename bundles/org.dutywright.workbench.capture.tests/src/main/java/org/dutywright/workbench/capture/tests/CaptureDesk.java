// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.export.CaptureWriters;
import org.dutywright.simulation.DemoScenarios;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.Simulator;
import org.dutywright.workbench.capture.CaptureEditor;
import org.dutywright.workbench.capture.internal.TracePlot;
import org.dutywright.workbench.internal.Jobs;
import org.dutywright.workbench.session.CaptureSession;
import org.dutywright.workbench.session.CaptureSessions;
import org.dutywright.workbench.session.SessionState.Phase;
import org.dutywright.workbench.tests.kit.Pump;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.IDE;

/** A job with captures, and hands that work the editor. */
final class CaptureDesk implements AutoCloseable {
    private final IProject project;

    CaptureDesk() throws CoreException {
        project = Jobs.create("traces", Optional.empty(), new NullProgressMonitor());
    }

    /** Simulates one of the demonstration captures into the job. */
    IFile simulate(String demo) throws IOException, CoreException {
        Scenario scenario = scenario(demo);
        Path folder = project.getFolder(Jobs.CAPTURES).getLocation().toPath();
        Simulator.write(scenario, folder.resolve(demo + ".csv"), Progress.NONE);
        project.refreshLocal(IResource.DEPTH_INFINITE, null);
        return project.getFolder(Jobs.CAPTURES).getFile(demo + ".csv");
    }

    private static Scenario scenario(String demo) {
        return DemoScenarios.all().stream()
                .filter(one -> one.name().equals(demo))
                .findFirst()
                .orElseThrow()
                .scenario();
    }

    /** Simulates one of the demonstration captures into a file of the format that its name tells. */
    IFile convert(String demo, String name) throws UnreadableException, IOException, CoreException {
        Path target = project.getFolder(Jobs.CAPTURES).getLocation().toPath().resolve(name);
        try (Capture capture = Simulator.capture(scenario(demo))) {
            OutputFile.write(
                    target,
                    CaptureWriters.of(target)
                            .orElseThrow()
                            .prepare(capture, Map.of(), Progress.NONE)
                            .content());
        }
        project.refreshLocal(IResource.DEPTH_INFINITE, null);
        return project.getFolder(Jobs.CAPTURES).getFile(name);
    }

    /** Writes a capture as text. */
    IFile write(String name, String text) throws CoreException {
        IFile file = project.getFolder(Jobs.CAPTURES).getFile(name);
        file.create(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), true, null);
        return file;
    }

    static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }

    /** Opens a file as a double click would. */
    CaptureEditor open(IFile file) throws CoreException {
        IEditorPart editor = IDE.openEditor(page(), file);
        if (editor instanceof CaptureEditor capture) {
            return capture;
        }
        throw new AssertionError(file + " is opened by " + editor.getClass());
    }

    /** Opens a file and waits until it is measured and its traces are drawn. */
    CaptureEditor openWhole(IFile file) throws CoreException {
        CaptureEditor editor = open(file);
        CaptureSession session = CaptureSessions.acquire(file);
        try {
            Pump.until("the capture is measured", () -> session.state().phase() == Phase.DONE);
        } finally {
            CaptureSessions.release(session);
        }
        awaitTraces(editor);
        return editor;
    }

    /** The plot of an editor, as soon as its traces are drawn. */
    static TracePlot awaitTraces(CaptureEditor editor) {
        TracePlot plot = Pump.untilPresent(
                "the traces are there", () -> Optional.ofNullable(editor.getAdapter(TracePlot.class)));
        Pump.settle();
        Pump.until("the traces of the present view are drawn", plot::isUpToDate);
        Pump.settle();
        return plot;
    }

    static void click(Control control, int x, int y) {
        mouse(control, SWT.MouseDown, x, y);
        mouse(control, SWT.MouseUp, x, y);
    }

    static void mouse(Control control, int type, int x, int y) {
        Event event = new Event();
        event.button = 1;
        event.x = x;
        event.y = y;
        control.notifyListeners(type, event);
    }

    static void wheel(Control control, int x, int count) {
        Event event = new Event();
        event.x = x;
        event.count = count;
        control.notifyListeners(SWT.MouseVerticalWheel, event);
    }

    static void key(Control control, int keyCode, char character) {
        Event event = new Event();
        event.keyCode = keyCode;
        event.character = character;
        control.notifyListeners(SWT.KeyDown, event);
    }

    @Override
    public void close() throws CoreException {
        page().closeAllEditors(false);
        Pump.until("the jobs are over", () -> Job.getJobManager().find(CaptureSessions.FAMILY).length == 0);
        project.delete(true, true, new NullProgressMonitor());
    }
}
