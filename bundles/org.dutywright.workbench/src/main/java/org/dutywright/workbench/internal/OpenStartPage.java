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
import org.eclipse.ui.internal.help.WorkbenchHelpSystem;

/** Once the workbench is up, shows the start page where the workspace is still empty. */
public final class OpenStartPage implements IStartup {
    @Override
    public void earlyStartup() {
        preferOwnHelp();
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

    /**
     * The help view comes with the cheat sheets and would take the keys for help, though its pages need a server that is
     * not there. The platform has no preference for which of two to take, only this call.
     */
    private static void preferOwnHelp() {
        WorkbenchHelpSystem.getInstance().setDesiredHelpSystemId(HelpPages.ID);
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
