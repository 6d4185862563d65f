// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.CancelledException;
import org.dutywright.simulation.DemoScenarios;
import org.dutywright.simulation.DemoScenarios.Demo;
import org.dutywright.simulation.Simulator;
import org.dutywright.workbench.MonitorProgress;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.resources.WorkspaceJob;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.OperationCanceledException;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.SubMonitor;

/**
 * Simulates the demonstration captures into a job of their own. What is already there is kept, so that a cancelled run
 * goes on where it stopped and nothing a user changed is lost.
 */
public final class DemonstrationJob extends WorkspaceJob {
    /** The name of the project, after the invented works yard that the captures come from. */
    public static final String PROJECT = "Harrow & Tern (demonstration)";

    private static final String SCENARIOS = "scenarios";

    /** A run that has not been scheduled yet. */
    public DemonstrationJob() {
        super("Simulating the demonstration captures");
        setRule(ResourcesPlugin.getWorkspace().getRoot());
        setUser(true);
    }

    /** The folder that the captures are written into. */
    public IFolder captures() {
        return ResourcesPlugin.getWorkspace().getRoot().getProject(PROJECT).getFolder(Jobs.CAPTURES);
    }

    @Override
    public IStatus runInWorkspace(IProgressMonitor monitor) throws CoreException {
        List<Demo> demos = DemoScenarios.all();
        SubMonitor steps = SubMonitor.convert(monitor, demos.size() + 2);
        IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject(PROJECT);
        try {
            Jobs.create(PROJECT, Optional.empty(), steps.split(1));
            for (Demo demo : demos) {
                write(demo, folder(project, Jobs.CAPTURES), folder(project, SCENARIOS), steps.split(1));
            }
            return Status.OK_STATUS;
        } catch (CancelledException | OperationCanceledException e) {
            return Status.CANCEL_STATUS;
        } catch (IOException e) {
            return Status.error(e.getMessage(), e);
        } finally {
            if (project.isOpen()) {
                project.refreshLocal(IResource.DEPTH_INFINITE, null);
            }
        }
    }

    private static Path folder(IProject project, String name) {
        return project.getLocation().append(name).toPath();
    }

    private static void write(Demo demo, Path captures, Path scenarios, IProgressMonitor monitor) throws IOException {
        Files.createDirectories(scenarios);
        Path text = scenarios.resolve(demo.name() + ".yaml");
        if (Files.notExists(text)) {
            Files.writeString(text, demo.text(), StandardCharsets.UTF_8);
        }
        Path csv = captures.resolve(demo.name() + ".csv");
        if (Files.notExists(csv)) {
            Simulator.write(demo.scenario(), csv, MonitorProgress.of(monitor));
        }
    }
}
