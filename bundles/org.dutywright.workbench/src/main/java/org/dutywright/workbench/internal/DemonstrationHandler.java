// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.runtime.jobs.IJobChangeEvent;
import org.eclipse.core.runtime.jobs.JobChangeAdapter;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.HandlerUtil;
import org.eclipse.ui.wizards.newresource.BasicNewResourceWizard;

/** Starts the simulation of the demonstration captures and shows them when they are there. */
public final class DemonstrationHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        IWorkbenchWindow window = HandlerUtil.getActiveWorkbenchWindow(event);
        DemonstrationJob job = new DemonstrationJob();
        job.addJobChangeListener(new JobChangeAdapter() {
            @Override
            public void done(IJobChangeEvent done) {
                if (done.getResult().isOK()) {
                    show(job.captures(), window);
                }
            }
        });
        job.schedule();
        // Handlers answer null by the contract of the command framework.
        return null;
    }

    private static void show(IFolder captures, IWorkbenchWindow window) {
        PlatformUI.getWorkbench().getDisplay().asyncExec(() -> {
            if (window != null
                    && window.getShell() != null
                    && !window.getShell().isDisposed()) {
                BasicNewResourceWizard.selectAndReveal(captures, window);
            }
        });
    }
}
