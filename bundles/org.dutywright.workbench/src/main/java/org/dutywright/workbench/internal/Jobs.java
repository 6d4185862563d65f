// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import java.net.URI;
import java.util.Optional;
import org.dutywright.workbench.WorkbenchIds;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectDescription;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.SubMonitor;

/** Makes job projects. */
public final class Jobs {
    /** The folder of a job that holds its captures. */
    public static final String CAPTURES = "captures";

    private Jobs() {}

    /** A project with the nature of a job and a folder for captures; one that exists is opened and completed. */
    public static IProject create(String name, Optional<URI> location, IProgressMonitor monitor) throws CoreException {
        SubMonitor steps = SubMonitor.convert(monitor, 3);
        IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject(name);
        if (!project.exists()) {
            IProjectDescription description = project.getWorkspace().newProjectDescription(name);
            description.setNatureIds(new String[] {WorkbenchIds.JOB_NATURE});
            location.ifPresent(description::setLocationURI);
            project.create(description, steps.split(1));
        }
        steps.setWorkRemaining(2);
        project.open(steps.split(1));
        IFolder captures = project.getFolder(CAPTURES);
        if (!captures.exists()) {
            captures.create(false, true, steps.split(1));
        }
        return project;
    }
}
