// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.Progress;
import org.dutywright.simulation.DemoScenarios;
import org.dutywright.simulation.DemoScenarios.Demo;
import org.dutywright.simulation.Simulator;
import org.dutywright.workbench.WorkbenchIds;
import org.dutywright.workbench.pulse.PulseIds;
import org.dutywright.workbench.session.CaptureSessions;
import org.dutywright.workbench.tests.kit.Pump;
import org.eclipse.core.commands.Command;
import org.eclipse.core.commands.ParameterizedCommand;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectDescription;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.commands.ICommandService;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.ide.IDE;

/** A job project with simulated captures, for tests. */
final class Yard implements AutoCloseable {
    private static final String TEXT_EDITOR = "org.eclipse.ui.DefaultTextEditor";

    private final IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
    private final IProject project;

    private Yard(IProject project) {
        this.project = project;
    }

    static Yard make(String name) throws CoreException {
        IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject(name);
        IProjectDescription description = project.getWorkspace().newProjectDescription(name);
        description.setNatureIds(new String[] {WorkbenchIds.JOB_NATURE});
        project.create(description, new NullProgressMonitor());
        project.open(new NullProgressMonitor());
        return new Yard(project);
    }

    static Demo demo(String name) {
        return DemoScenarios.all().stream()
                .filter(demo -> demo.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    IFile simulate(Demo demo) throws IOException, CoreException {
        IFile file = project.getFile(demo.name() + ".csv");
        Simulator.write(demo.scenario(), file.getLocation().toPath(), Progress.NONE);
        project.refreshLocal(IResource.DEPTH_INFINITE, new NullProgressMonitor());
        return file;
    }

    IWorkbenchPage page() {
        return window.getActivePage();
    }

    IWorkbenchWindow window() {
        return window;
    }

    /** Opens a capture as text: the view follows that as well, and the test needs no other bundle of ours. */
    IEditorPart open(IFile file) throws PartInitException {
        return IDE.openEditor(page(), file, TEXT_EDITOR);
    }

    /** Checks the capture that is open, without asking. */
    void check(String sensor) throws CommandException {
        Command command = window.getService(ICommandService.class).getCommand(PulseIds.CHECK);
        ParameterizedCommand ready =
                ParameterizedCommand.generateCommand(command, Map.of(PulseIds.CHECK_SENSOR, sensor));
        window.getService(IHandlerService.class).executeCommand(ready, null);
    }

    CheckReport report(IFile file) {
        return Pump.untilPresent("there is a report on " + file.getName(), () -> CheckReports.of(file));
    }

    @Override
    public void close() throws CoreException {
        page().closeAllEditors(false);
        Pump.until("the work is over", () -> none(CaptureSessions.FAMILY) && none(CheckJob.FAMILY));
        Optional.of(project).filter(IResource::exists).orElseThrow().delete(true, true, new NullProgressMonitor());
    }

    private static boolean none(Object family) {
        return Job.getJobManager().find(family).length == 0;
    }
}
