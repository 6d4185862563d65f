// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import java.lang.reflect.InvocationTargetException;
import java.util.Optional;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.actions.WorkspaceModifyOperation;
import org.eclipse.ui.dialogs.WizardNewProjectCreationPage;
import org.eclipse.ui.wizards.newresource.BasicNewResourceWizard;

/** Asks for a name and a place and makes a job there. */
public final class NewJobWizard extends BasicNewResourceWizard {
    private WizardNewProjectCreationPage page;

    @Override
    public void init(IWorkbench workbench, IStructuredSelection selection) {
        super.init(workbench, selection);
        setWindowTitle("New Job");
        setNeedsProgressMonitor(true);
    }

    @Override
    public void addPages() {
        page = new WizardNewProjectCreationPage("job");
        page.setTitle("Job");
        page.setDescription("A project that keeps the captures of one job together.");
        addPage(page);
    }

    @Override
    public boolean performFinish() {
        try {
            Creation creation = new Creation();
            getContainer().run(true, true, creation);
            creation.project.ifPresent(project -> selectAndReveal(project.getFolder(Jobs.CAPTURES)));
            return true;
        } catch (InvocationTargetException e) {
            CoreException cause = (CoreException) e.getCause();
            ILog.of(getClass()).log(cause.getStatus());
            ErrorDialog.openError(getShell(), "New Job", "The job could not be made.", cause.getStatus());
            return false;
        } catch (InterruptedException e) {
            return false;
        }
    }

    private final class Creation extends WorkspaceModifyOperation {
        private final String name = page.getProjectName();
        private final Optional<java.net.URI> location =
                page.useDefaults() ? Optional.empty() : Optional.of(page.getLocationURI());
        private Optional<IProject> project = Optional.empty();

        @Override
        protected void execute(org.eclipse.core.runtime.IProgressMonitor monitor) throws CoreException {
            project = Optional.of(Jobs.create(name, location, monitor));
        }
    }
}
