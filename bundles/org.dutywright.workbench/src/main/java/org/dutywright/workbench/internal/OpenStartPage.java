// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import org.dutywright.workbench.WorkbenchIds;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.ILog;
import org.eclipse.ui.IStartup;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.HandlerUtil;

/** Shows the start page once the workbench is up, where the workspace is still empty. */
public final class OpenStartPage implements IStartup {
    @Override
    public void earlyStartup() {
        if (ResourcesPlugin.getWorkspace().getRoot().getProjects().length > 0) {
            return;
        }
        PlatformUI.getWorkbench().getDisplay().asyncExec(() -> {
            IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
            if (window == null) {
                return;
            }
            try {
                open(window);
            } catch (PartInitException e) {
                ILog.of(OpenStartPage.class).log(e.getStatus());
            }
        });
    }

    private static void open(IWorkbenchWindow window) throws PartInitException {
        window.getActivePage().openEditor(new StartInput(), WorkbenchIds.START_PAGE);
    }

    /** Shows the start page when it is asked for. */
    public static final class Handler extends AbstractHandler {
        @Override
        public Object execute(ExecutionEvent event) throws ExecutionException {
            try {
                open(HandlerUtil.getActiveWorkbenchWindowChecked(event));
            } catch (PartInitException e) {
                throw new ExecutionException(e.getMessage(), e);
            }
            // Handlers answer null by the contract of the command framework.
            return null;
        }
    }
}
