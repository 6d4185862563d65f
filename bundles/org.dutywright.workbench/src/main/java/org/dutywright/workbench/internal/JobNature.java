// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectNature;

/** Marks a project as a job: its files are captures and what was found in them. It configures nothing. */
public final class JobNature implements IProjectNature {
    private IProject project;

    @Override
    public void configure() {}

    @Override
    public void deconfigure() {}

    @Override
    public IProject getProject() {
        return project;
    }

    @Override
    public void setProject(IProject value) {
        project = value;
    }
}
